/**
 * `npm run place`: makes a place record from official normals, from a daily record, or from answers. All decisions are in
 * src/core/places and src/core/climate; this file reads, asks, prints and writes.
 */

import { readFile } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { contentDir } from '../src/content.ts';
import { type DailyUnit, dailyUnits, readDailyRecord } from '../src/core/climate/dailyRecordText.ts';
import { stationFigures } from '../src/core/climate/official/stationFigures.ts';
import { type OfficialTable, readOfficialTable } from '../src/core/climate/official/table.ts';
import { type AnswerKey, type Answers, answerKeys, answersDraft } from '../src/core/places/answers.ts';
import { addTo, type Drafted, finishDraft } from '../src/core/places/draft.ts';
import { dailyDraft, type YearRange } from '../src/core/places/fromDailyRecord.ts';
import { officialDraft } from '../src/core/places/fromOfficial.ts';
import { placeText } from '../src/core/places/placeText.ts';
import { expectedFiles, kindOfSource, type SourceKind, seenIn } from '../src/core/places/sourceFile.ts';
import { writeNew, writeWhole } from '../src/files.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { type Asker, asker } from './placeQuestions.ts';
import { draftOfStation, isZip, type OfferedStation, stationCalled, stationsAround } from './placeSearch.ts';

const help = `Makes a place record, content/places/ID.yaml.

From the station files of the U.S. Climate Normals (monthly, daily and annual files, together or alone):
  npm run place -- mly-normals.csv dly-normals.csv ann-normals.csv

From a daily record (CSV: date, tmin_c, tmax_c or _f), the export of a weather station, or a station file of GHCN-Daily (CSV or .dly):
  npm run place -- my-station.csv --name "Upper field" --region Kentucky --country US \\
    --lat 38.04 --lon -84.5 --elevation-m 298

From one of the 8,787 weather stations that come with Leafdrop, by name or id (src/stations/README.md):
  npm run place -- --station "Asheville Rgnl" --id asheville-nc
From the one nearest to a ZIP code of the United States:
  npm run place -- --zip 28801 --name "Upper field"

From answers: run it without a file and it asks, or give them:
  npm run place -- --name Adelaide --region "South Australia" --country AU --lat -34.95 --lon 138.52 --elevation-m 8 \\
    --tmax-c "29 28 26 22.9 18.9 16.1 15.3 16.3 19 22.2 25.3 27" --tmin-c "17.1 16.8 ..." \\
    --period 2003-2021 --source "..." --terms "..."

Flags
  --name --region --country --lat --lon --elevation-m --period --source --terms
                        win over what a file says; south and west are negative
  --tmax-c --tmin-c --tmax-f --tmin-f --rain-mm --rain-in --dew-c
                        twelve numbers, January to December
  --zone --zone-basis   winter zone such as 7b, and the map it is read from
  --sd-tmin-c --sd-tmax-c --sd-about month|curve --sd-source
                        standard deviation of daily values, twelve numbers each, and what it is taken about
  --first-freeze --last-freeze --freeze-source
                        published dates of 32 F: the middle one (10-15), or those of 10, 50 and 90 %
                        ("10-01 10-15 10-30"); other thresholds after a semicolon ("10-15; 28F 11-02")
  --coldest-night-c --coldest-night-f --coldest-night-source
                        mean of the coldest night of each year
  --unit C|F|tenths-C   unit of a daily record whose columns do not say it
  --years 1991-2020     use only these calendar years of a daily record; else its last thirty
  --id ID               name of the file; else name and state or country
  --print               show the record instead of writing it
  --replace             overwrite a record that exists
  --help

CONTENT_DIR names another content folder.
`;

const flagOf = (key: AnswerKey) => key.replaceAll('_', '-');

const options = {
  ...Object.fromEntries(answerKeys.map(key => [flagOf(key), { type: 'string' } as const])),
  station: { type: 'string' },
  zip: { type: 'string' },
  unit: { type: 'string' },
  years: { type: 'string' },
  id: { type: 'string' },
  print: { type: 'boolean' },
  replace: { type: 'boolean' },
} as const;

/** `--lat -34.9` as `--lat=-34.9`: a value that starts with a minus would be taken for a flag. */
function joinNegative(words: readonly string[]): string[] {
  const joined: string[] = [];
  for (const word of words) {
    const before = joined.at(-1);
    if (/^-[\d.]/.test(word) && before?.startsWith('--') && !before.includes('=')) {
      joined[joined.length - 1] = `${before}=${word}`;
    } else joined.push(word);
  }
  return joined;
}

function unitOf(text: string | undefined): DailyUnit | null {
  if (text === undefined) return null;
  const unit = dailyUnits.find(each => each.toLowerCase() === text.toLowerCase());
  if (!unit) throw new UsageError(`"${text}" is no unit; give one of ${dailyUnits.join(', ')}.`);
  return unit;
}

function yearsOf(text: string | undefined): YearRange | null {
  if (text === undefined) return null;
  const match = /^(\d{4})-(\d{4})$/.exec(text);
  const [from, to] = [Number(match?.[1]), Number(match?.[2])];
  if (!match || from > to) throw new UsageError(`"${text}" is no span of years; write it as 1991-2020.`);
  return { from, to };
}

interface Source {
  name: string;
  text: string;
  kind: Exclude<SourceKind, null>;
}

async function readSource(path: string): Promise<Source> {
  const bytes = await readFile(resolve(process.env.INIT_CWD ?? '.', path)).catch(() => {
    throw new UsageError(`${path} cannot be read; is the name right?`);
  });
  const text = new TextDecoder().decode(bytes);
  const kind = kindOfSource(text);
  if (kind === null) {
    throw new UsageError(
      `${path} is no file a place can be made from. Seen: ${seenIn(bytes, text)}. Expected: ${expectedFiles}.`,
    );
  }
  return { name: basename(path), text, kind };
}

function draftFromNormals(sources: readonly Source[], period: string | null): Drafted {
  const tables: OfficialTable[] = sources.map(({ name, text }) => {
    const table = readOfficialTable(text);
    if ('refused' in table) throw new UsageError(`${name}: ${table.refused}`);
    return table;
  });
  const result = stationFigures(tables, period);
  if ('refused' in result) throw new UsageError(result.refused);
  return officialDraft(result.figures);
}

interface DailySettings {
  unit: DailyUnit | null;
  years: YearRange | null;
  /** Latitude the grower gives, which wins over that of the file. */
  lat: number | undefined;
}

async function draftFromDaily(
  { name, text }: Source,
  settings: DailySettings,
  ask: Asker | null,
): Promise<Drafted> {
  let record = readDailyRecord(text, settings.unit);
  if (record.unit === null && ask) {
    const unit = await ask.unit();
    record = readDailyRecord(text, unit);
  }
  const errors = record.problems.filter(({ level }) => level === 'error');
  if (errors.length > 0) {
    const unit =
      record.unit === null && settings.unit === null ? ' Or say --unit C, --unit F or --unit tenths-C.' : '';
    throw new UsageError(errors.map(({ message }) => `${name}: ${message}.`).join('\n  ') + unit);
  }
  const lat = settings.lat ?? record.station.lat ?? (await ask?.latitude());
  if (lat === undefined) throw new UsageError(`${name}: the latitude decides when winter is; give --lat.`);
  const drafted = dailyDraft(record, lat, name, settings.years);
  if ('problem' in drafted) throw new UsageError(drafted.problem);
  return { ...drafted, draft: { ...drafted.draft, lat } };
}

async function draftFromFiles(
  paths: readonly string[],
  period: string | null,
  settings: DailySettings,
  ask: Asker | null,
): Promise<Drafted> {
  const sources = await Promise.all(paths.map(readSource));
  const [first] = sources;
  if (!first) return { draft: {}, notes: [] };
  if (sources.every(({ kind }) => kind === 'normals')) return draftFromNormals(sources, period);
  if (sources.length > 1) throw new UsageError('Give the normals files of one station, or one daily record.');
  return draftFromDaily(first, settings, ask);
}

async function writeRecord(id: string, text: string, replace: boolean): Promise<void> {
  const path = join(contentDir(), 'places', `${id}.yaml`);
  const write = replace ? writeWhole : writeNew;
  await write(path, text).catch((problem: NodeJS.ErrnoException) => {
    if (problem.code !== 'EEXIST') throw problem;
    throw new UsageError(`${path} exists already; add --replace to overwrite it, or --id for another name.`);
  });
  process.stdout.write(`${path}\n`);
}

/** The record of the first of some stations, the nearest where they lie around a ZIP code. */
function draftFromStation([nearest, ...others]: readonly OfferedStation[]): Drafted {
  const { station, words } = nearest!;
  const { draft, notes } = draftOfStation(station);
  const near =
    others.length === 0
      ? []
      : [`taken: ${words}. Also near, for --station: ${others.map(each => each.words).join('; ')}.`];
  return { draft, notes: [...near, ...notes] };
}

/** Runs the command with its words; returns the exit code. Throws a UsageError for what the person at the keyboard can mend. */
export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(joinNegative(words), help, options);
  const given: Answers = {};
  for (const key of answerKeys) {
    const text = (values as Record<string, string | boolean | undefined>)[flagOf(key)];
    if (typeof text === 'string') given[key] = text;
  }
  if ([values.station, values.zip, positionals[0]].filter(each => each !== undefined).length > 1) {
    throw new UsageError('give a file, --station or --zip: one of them.');
  }
  if (values.zip !== undefined && !isZip(values.zip))
    throw new UsageError(`--zip "${values.zip}" is no ZIP code; write five digits, such as 28801.`);
  const station = values.station ?? values.zip;
  // What a station does not say is asked for by flags: whoever names one in a script gets no question.
  const ask = process.stdin.isTTY && station === undefined ? asker() : null;
  if (positionals.length === 0 && station === undefined && Object.keys(given).length === 0 && !ask) {
    throw new UsageError('give a file or the figures of the place. Try --help.');
  }
  const answered = answersDraft(given);
  if (answered.problems.length > 0) throw new UsageError(answered.problems.join('\n  '));
  const settings = { unit: unitOf(values.unit), years: yearsOf(values.years), lat: answered.draft.lat };
  const fromFiles =
    station === undefined
      ? await draftFromFiles(positionals, given.period ?? null, settings, ask)
      : draftFromStation(values.zip ? await stationsAround(values.zip) : stationCalled(station));
  const draft = addTo(fromFiles.draft, answered.draft);
  const whole = ask ? addTo(draft, await ask.missingIn(draft)) : draft;

  const finished = finishDraft(whole, values.id ?? null);
  for (const note of fromFiles.notes) process.stderr.write(`note: ${note}\n`);
  if ('problems' in finished) throw new UsageError(finished.problems.join('\n  '));
  const text = placeText(finished.record);
  if (values.print) process.stdout.write(text);
  else await writeRecord(finished.id, text, values.replace ?? false);
  return 0;
}

await runIfMain(import.meta, main);
