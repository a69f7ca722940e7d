/** A place record as the text of its file: keys in the order of the schema, twelve numbers on one line. */

import { Document, isMap, isScalar, isSeq, type Node, Scalar, visit } from 'yaml';
import { type WrittenPlace, writtenPlace } from '../records/place.ts';

/** Tells an editor where the schema is, so that it can complete and check while the grower types. */
const MODELINE = '# yaml-language-server: $schema=../../src/schemas/place.schema.json\n';

/** Longest line before prose is folded. Twelve numbers with a sign and a decimal stay on one line within it. */
const LINE_WIDTH = 110;

const monthDayPattern = /^\d{2}-\d{2}$/;

function inSchemaOrder(place: WrittenPlace): Record<string, unknown> {
  const ordered: Record<string, unknown> = {};
  for (const key of Object.keys(writtenPlace.shape) as (keyof WrittenPlace)[]) {
    if (place[key] !== undefined) ordered[key] = place[key];
  }
  return ordered;
}

/** Lists, and maps that hold nothing but scalars under `freeze`, go on one line; month-days are quoted. */
function layOut(document: Document): void {
  visit(document, {
    Seq: (_, node) => {
      node.flow = true;
    },
    Map: (_, node, path) => {
      const small = node.items.every(({ value }) => isScalar(value));
      const depth = path.filter(isMap).length;
      if (small && depth >= 3) node.flow = true;
    },
    Scalar: (key, node) => {
      if (key === 'value' && typeof node.value === 'string' && monthDayPattern.test(node.value)) {
        node.type = Scalar.QUOTE_DOUBLE;
      }
    },
  });
}

/** Prose too long for its line is folded, so that no sign in it needs quotes. */
function foldProse(node: Node): void {
  if (isMap(node)) {
    for (const pair of node.items) {
      const keyWidth = isScalar(pair.key) ? String(pair.key.value).length + 4 : 0;
      if (isScalar(pair.value) && typeof pair.value.value === 'string') {
        if (keyWidth + pair.value.value.length > LINE_WIDTH) pair.value.type = Scalar.BLOCK_FOLDED;
      } else foldProse(pair.value as Node);
    }
  } else if (isSeq(node)) {
    for (const item of node.items) foldProse(item as Node);
  }
}

/** YAML text of a place record, ready to be a file in content/places. Reading it back gives the same record. */
export function placeText(place: WrittenPlace): string {
  const document = new Document(inSchemaOrder(place));
  layOut(document);
  if (document.contents) foldProse(document.contents as Node);
  return MODELINE + document.toString({ lineWidth: LINE_WIDTH, flowCollectionPadding: true });
}
