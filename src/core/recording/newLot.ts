/** A new lot in the list of its year and method. */

import { type Day, dayInWords } from '../days.ts';
import { editYaml } from '../editing/editYaml.ts';
import { itemLines, type YamlValue } from '../editing/yamlWords.ts';
import { plural, quote } from '../reading/problem.ts';
import { type Form, forms, type Method } from '../records/common.ts';
import type { Lot } from '../records/lot.ts';
import { type Planned, unknown, type YardToAddTo } from './openYard.ts';

export interface LotRequest {
  /** Left out: the next of its year and method. */
  id?: string | undefined;
  cultivar: string;
  method: Method;
  started: Day;
  raised: number;
  rootstock?: string | undefined;
  severed?: Day | undefined;
  lifted?: Day | undefined;
  potted?: Day | undefined;
  container?: string | undefined;
  /** Left out: those of the lots like it. */
  forms?: readonly Form[] | undefined;
}

const listNames: Record<Method, string> = {
  'air-layer': 'layers',
  cutting: 'cuttings',
  division: 'divisions',
  graft: 'grafts',
};
const idWords: Record<Method, string> = {
  'air-layer': 'layer',
  cutting: 'cut',
  division: 'split',
  graft: 'graft',
};

const yearOf = (day: Day) => day.slice(0, 4);

/** Lots of a year and method, the newest id last. */
function lotsLike({ records: { lots } }: YardToAddTo, method: Method, year: string): Lot[] {
  return lots.filter(lot => lot.method === method && yearOf(lot.started) === year);
}

/** The id after the last one of its kind: 26-cut-15 gives 26-cut-16. */
export function nextLotId(yard: YardToAddTo, method: Method, started: Day): string {
  const pattern = /^(.*?)(\d+)$/;
  const numbered = lotsLike(yard, method, yearOf(started)).flatMap(({ id }) => {
    const [, start, number] = pattern.exec(id) ?? [];
    return start === undefined || number === undefined ? [] : [{ start, number }];
  });
  const last = numbered.sort((a, b) => Number(a.number) - Number(b.number)).at(-1);
  const start = last?.start ?? `${yearOf(started).slice(2)}-${idWords[method]}-`;
  const digits = last?.number.length ?? 2;
  const taken = new Set(yard.records.lots.map(({ id }) => id));
  for (let next = Number(last?.number ?? 0) + 1; next < 100_000; next += 1) {
    const id = `${start}${String(next).padStart(digits, '0')}`;
    if (!taken.has(id)) return id;
  }
  return '';
}

/** Forms of the newest lot of its method, else all that a potted tree can be sold in. */
export function usualForms({ records: { lots } }: YardToAddTo, method: Method): readonly Form[] {
  const like = lots.filter(lot => lot.method === method).sort((a, b) => (a.started < b.started ? -1 : 1));
  return like.at(-1)?.forms ?? forms;
}

/** The list a lot goes into: that of the lots of its year and method, else one of that name. */
function listFor(yard: YardToAddTo, method: Method, started: Day): string {
  const like = lotsLike(yard, method, yearOf(started)).at(-1);
  return like?.file ?? `lots/${yearOf(started)}-${listNames[method]}.yaml`;
}

const schemaLine = '# yaml-language-server: $schema=../../src/schemas/lots.schema.json\n\n';

/** Adds a lot to its list; the list is begun where there is none. */
export function planLot(yard: YardToAddTo, request: LotRequest): Planned {
  const { cultivar, method, started, raised, container } = request;
  if (!yard.records.cultivars.has(cultivar))
    return unknown('cultivar', cultivar, yard.records.cultivars.keys());
  const id = request.id ?? nextLotId(yard, method, started);
  if (yard.records.lots.some(lot => lot.id === id))
    return { refused: `there is a lot ${quote(id)} already; ids are never used twice.` };
  const potted = request.potted ?? request.severed ?? request.lifted ?? started;
  const entry: Record<string, YamlValue> = { lot: id, cultivar, method };
  if (request.rootstock) entry.rootstock = request.rootstock;
  entry.started = started;
  if (request.severed) entry.severed = request.severed;
  if (request.lifted) entry.lifted = request.lifted;
  if (container) entry.pottings = [{ date: potted, container }];
  entry.raised = raised;
  entry.forms = [...(request.forms ?? usualForms(yard, method))];
  const path = listFor(yard, method, started);
  const text = yard.texts.get(path);
  const edited =
    text === undefined
      ? { text: `${schemaLine}${itemLines(entry, 0, '\n')}\n` }
      : editYaml(text, [{ kind: 'append', path: [], value: entry }]);
  if ('refused' in edited) return { refused: `content/${path} was left alone: ${edited.refused}.` };
  const said = `Lot ${id}: ${plural(raised, 'plant')} of ${cultivar}, started ${dayInWords(started)}.`;
  return { changes: [{ path, text: edited.text }], said };
}
