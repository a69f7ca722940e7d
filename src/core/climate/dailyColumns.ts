/** Where a table of readings has its days and temperatures: by the names stations, agencies and consoles give their columns. */

type ColumnUnit = 'C' | 'F';

export interface Column {
  index: number;
  unit: ColumnUnit | null;
  /** Column of the agency's flags (GHCN-Daily: measurement, quality, source), -1 when there is none. */
  flags: number;
}

export interface DailyColumns {
  date: number;
  /** A column of its own for the time of day, -1 when there is none. */
  time: number;
  tmin: Column;
  tmax: Column;
}

const dateNames = new Set([
  'date',
  'day',
  'timestamp',
  'datetime',
  'date time',
  'date & time',
  'date and time',
]);
/** What other temperatures than that of the outside air are called. */
const otherThings =
  /\b(?:in|inside|indoor|soil|dew|chill|heat|index|feels|like|humidity|hum|wet|bulb|water|leaf|rain|bar|pressure|wind|thw|thsw|departure|normal|record|observed|attributes|time|at)\b/;
const lowWords = /\b(?:low|lo|min|minimum|lowest|tmin|tempmin)\b/;
const highWords = /\b(?:hi|high|max|maximum|highest|tmax|tempmax)\b/;
const meanWords = /\b(?:mean|avg|average|tavg)\b/;
const temperatureWords =
  /\b(?:temp|temps|temperature|temperatures|t|tmin|tmax|tempmin|tempmax|outdoor|air)\b/;

function plainTitle(title: string): string {
  return title
    .toLowerCase()
    .replace(/[^a-z0-9&]+/g, ' ')
    .trim();
}

function unitIn(title: string): ColumnUnit | null {
  const word = /\b(?:deg(?:rees)? ?)?(c|f|celsius|fahrenheit)\b/.exec(plainTitle(title))?.[1];
  return word === undefined ? null : word.startsWith('c') ? 'C' : 'F';
}

/** The columns of a header, or null when it is not that of such a table. */
export function dailyColumns(header: readonly string[]): DailyColumns | null {
  const titles = header.map(plainTitle);
  const column = (index: number): Column => ({
    index,
    unit: unitIn(header[index]!),
    flags: titles.indexOf(`${titles[index]} attributes`),
  });
  const air = (words: RegExp, others: RegExp) =>
    titles.findIndex(
      title =>
        words.test(title) && temperatureWords.test(title) && !others.test(title) && !otherThings.test(title),
    );
  const low = air(lowWords, highWords);
  const high = air(highWords, lowWords);
  const only = air(
    temperatureWords,
    new RegExp(`${lowWords.source}|${highWords.source}|${meanWords.source}`),
  );
  const time = titles.indexOf('time');
  const named = titles.findIndex(title => dateNames.has(title));
  const date = named >= 0 ? named : time;
  if (date < 0) return null;
  const [tmin, tmax] = low >= 0 && high >= 0 ? [low, high] : [only, only];
  if (tmin < 0 || tmax < 0) return null;
  return { date, time: named >= 0 ? time : -1, tmin: column(tmin), tmax: column(tmax) };
}
