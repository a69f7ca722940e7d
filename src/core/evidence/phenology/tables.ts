/** One table for each species with dated observations: observed and computed days of first ripe fruit, and the errors. */
import type { StationNetwork } from '../../climate/anywhere/network.ts';
import { doyFromMonthDay } from '../../days.ts';
import type { Species } from '../../records/species.ts';
import { type EvidenceRow, type EvidenceTable, rowsFrom } from '../table.ts';
import { type ComparedRow, compareRow, errorsOf, speciesNamed } from './comparison.ts';
import { computedDay, errorDays } from './computedDay.ts';
import { type ObservedAt, refitted } from './fit.ts';
import { observedRows, type SourcedObservation } from './observedRows.ts';
import { type ClimateAt, climateAt } from './pointClimate.ts';

/** Mean error a species may have, days: over all its rows, and with the place of each row left out of the fit. Standing: ours. */
const LARGEST_MEAN_DAYS = 12;
const LARGEST_LEFT_OUT_DAYS = 13;
/** Mean error over all species. */
const LARGEST_OVERALL_DAYS = 8;
/** A single row may be off by this: bulletins round to parts of a month, and trees differ. Standing: ours. */
const LARGEST_SINGLE_DAYS = 45;
/** Mean error of bloom a species may have. Standing: ours. */
const LARGEST_BLOOM_DAYS = 12;
/** Budbreak was not fitted: what a single row may be off, days. */
const LARGEST_LEAF_DAYS = 35;

interface SpeciesRows {
  readonly species: Species;
  readonly rows: readonly (ComparedRow & { readonly observation: SourcedObservation })[];
}

const ripeRows = ({ rows }: SpeciesRows) =>
  rows.filter(({ observation }) => observation.event === 'first-ripe');

function compared(speciesList: readonly Species[], at: ClimateAt): SpeciesRows[] {
  const bySpecies = new Map<Species, SourcedObservation[]>();
  for (const row of observedRows()) {
    const species = speciesNamed(speciesList, row.species);
    if (species !== null) bySpecies.set(species, [...(bySpecies.get(species) ?? []), row]);
  }
  return [...bySpecies].map(([species, rows]) => ({
    species,
    rows: rows.map(row => ({ ...compareRow(row, [species], at), observation: row })),
  }));
}

/** Mean error of first ripe fruit when the figures are fitted anew without the place of each row. */
function leftOutDays({ species, rows }: SpeciesRows, at: ClimateAt): number {
  const usable: ObservedAt[] = rows.flatMap(({ observation }) => {
    const climate = at(observation);
    return 'refused' in climate ? [] : [{ row: observation, years: climate.years }];
  });
  const withoutPlace = new Map<string, Species>();
  const errors = usable
    .filter(({ row }) => row.event === 'first-ripe')
    .flatMap(({ row, years }) => {
      const fitted =
        withoutPlace.get(row.place) ??
        refitted(
          species,
          usable.filter(other => other.row.place !== row.place),
        );
      withoutPlace.set(row.place, fitted);
      const found = computedDay(years, fitted, row);
      return 'doy' in found && found.doy !== null ? [Math.abs(errorDays(found.doy, row))] : [];
    });
  return errors.reduce((sum, days) => sum + days, 0) / errors.length;
}

function rangeWords({ from, to }: SourcedObservation): string {
  return from === to ? from : `${from} to ${to}`;
}

/** A row of first ripe fruit: the middle of the observed range as a day of the year, moved so that a range over the new year stays one. */
function dateRow({ observation, errorDays: off, computed }: SpeciesRows['rows'][number]): EvidenceRow {
  const { place, crop, class: name, source, standing } = observation;
  const what = `${place}: ${name} ${crop} crop, ${rangeWords(observation)}`;
  const from = rowsFrom(source, standing);
  const doy = computed === null ? null : doyFromMonthDay(computed);
  if (doy === null || off === null) return from.text(what, 'ripe', 'never');
  return from.number(what, doy - off, doy, LARGEST_SINGLE_DAYS, 'day of year');
}

/** What a table cannot hold as a row, by botanical name. */
const knownWeak: Readonly<Record<string, string>> = {
  'Ficus carica':
    ' In the low desert the model is five to six weeks early: the University of Arizona (Cooperative Extension, AZ1636, 2014) has brebas there in late June and the main crop in August or September. Its months are for all figs of a region and not for a dated place, so they are no row. Counting heat up to 22 to 32 C only, or less of it above 30 to 36 C, moves the dates there by one to two weeks and leaves the errors elsewhere as they are or larger, so the published 36 C stays; why heat slows figs there is not known to us.',
};

const READ_SOURCE = 'Mean over the rows below; sources and standing stand with each';

function tableOf(of: SpeciesRows, at: ClimateAt): EvidenceTable {
  const { species, rows } = of;
  const ripe = ripeRows(of);
  const { meanAbsoluteDays, never, n } = errorsOf(ripe);
  const blooms = errorsOf(rows.filter(({ observation }) => observation.event === 'full-bloom'));
  const summary = rowsFrom(READ_SOURCE, 'memory');
  const read = ripe.filter(({ observation }) => observation.standing === 'published').length;
  const places = new Set(ripe.map(({ observation }) => observation.place)).size;
  const notChecked = rows.flatMap(({ observation, reason }) =>
    reason === null ? [] : [{ what: `${observation.place}, ${observation.event}`, why: reason }],
  );
  return {
    id: `ripening-${species.id}`,
    title: `Ripening of ${species.common[0] ?? species.id}: observed and computed`,
    about: `${n} dated observations of first ripe fruit at ${places} places beside the middle day the model computes from the climate of the place. Our figures were fitted to these rows, so the errors with the place left out of the fit tell more.`,
    weak: `${read} of ${n} rows were read in a publication; the others are from memory of the publication named, and may be off by a week or two. Many tell the start of picking rather than the first ripe fruit.${knownWeak[species.botanical] ?? ''}`,
    rows: [
      summary.number('mean error of first ripe fruit', 0, meanAbsoluteDays ?? 365, LARGEST_MEAN_DAYS, 'days'),
      summary.number(
        'the same, the place of each row left out of the fit',
        0,
        leftOutDays(of, at),
        LARGEST_LEFT_OUT_DAYS,
        'days',
      ),
      summary.number('rows that ripen there and by the model never do', 0, never, 0, 'rows'),
      ...(species.bloom === null || blooms.meanAbsoluteDays === null
        ? []
        : [
            summary.number(
              `mean error of full bloom, ${blooms.n} rows`,
              0,
              blooms.meanAbsoluteDays,
              LARGEST_BLOOM_DAYS,
              'days',
            ),
          ]),
      ...ripe.filter(({ reason }) => reason === null).map(dateRow),
    ],
    notChecked,
  };
}

const leafEvents = { budbreak: 'budbreak', leafout: 'first leaves' } as const;

/** Budbreak and first leaves of all species: few rows, and none of them was fitted. */
function leavesTable(all: readonly SpeciesRows[]): EvidenceTable[] {
  const events = Object.keys(leafEvents) as (keyof typeof leafEvents)[];
  const rows = events.flatMap(event =>
    all.flatMap(({ species, rows: of }) =>
      of
        .filter(({ observation, errorDays: off }) => observation.event === event && off !== null)
        .map(({ observation, errorDays: off }) =>
          rowsFrom(observation.source, observation.standing).number(
            `${leafEvents[event]} of ${species.common[0] ?? species.id}, ${observation.place}, ${rangeWords(observation)}: days late`,
            0,
            off ?? 0,
            LARGEST_LEAF_DAYS,
            'days',
          ),
        ),
    ),
  );
  if (rows.length === 0) return [];
  return [
    {
      id: 'leaves',
      title: 'Budbreak and first leaves: observed and computed',
      about: 'Dated observations of all species beside the middle day by the climate of the place.',
      weak: 'Some rows are for the start and others for the end of what happens over weeks. Leaf fall is not among them: the few dates known to us are off by two to four weeks, and tell too different things (first leaves down, all down) to set its figures by.',
      rows,
      notChecked: [],
    },
  ];
}

/** Tables of every species of the records that has observations, and one over all of them. Costs a second or two. */
export function phenologyTables(speciesList: readonly Species[], network: StationNetwork): EvidenceTable[] {
  const at = climateAt(network);
  const all = compared(speciesList, at);
  const overall = errorsOf(all.flatMap(ripeRows));
  if (overall.meanAbsoluteDays === null) return [];
  const summary = rowsFrom(READ_SOURCE, 'memory');
  return [
    {
      id: 'ripening-overall',
      title: 'Ripening: observed and computed dates of all species',
      about: `The mean error over ${overall.n} dated observations of first ripe fruit; the tables below hold them species by species.`,
      weak: null,
      rows: [
        summary.number(
          'mean error of first ripe fruit, all species',
          0,
          overall.meanAbsoluteDays,
          LARGEST_OVERALL_DAYS,
          'days',
        ),
      ],
      notChecked: [],
    },
    ...leavesTable(all),
    ...all.map(of => tableOf(of, at)),
  ];
}
