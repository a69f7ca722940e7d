/** Writes path data of SVG in few bytes: whole steps on a grid finer than the eye, each from the point before. */

/** Millimeters to the right and down. */
export type Point = readonly [x: number, y: number];

export interface Pen {
  move(to: Point): void;
  line(to: Point): void;
  /** A quadratic curve. */
  bend(control: Point, to: Point): void;
  /** A cubic curve. */
  curve(first: Point, second: Point, to: Point): void;
  /** A half turn of an ellipse. */
  turn(radiusX: number, radiusY: number, to: Point): void;
  /** A stroke without length: its round ends make a dot. */
  dot(at: Point): void;
  close(): void;
  /** The path data so far. */
  data(): string;
}

/** A pen for a grid of so many steps to the millimeter; points are given in millimeters and land on the grid. */
export function pen(perMm: number): Pen {
  let data = '';
  let at: Point = [0, 0];
  let start: Point = [0, 0];
  const onGrid = ([x, y]: Point): Point => [Math.round(x * perMm), Math.round(y * perMm)];
  // A radius too small for its ends grows with them; one too large would make a lens.
  const radiusSteps = (mm: number) => Math.max(1, Math.floor(mm * perMm));
  // A sign sets a number apart from the one before as well as a space does.
  const write = (value: number, first: boolean) => {
    data += first || value < 0 ? value : ` ${value}`;
  };
  const step = (command: string, points: readonly Point[], before: readonly number[] = []) => {
    data += command;
    let first = true;
    for (const value of before) {
      write(value, first);
      first = false;
    }
    let placed = at;
    for (const point of points) {
      placed = onGrid(point);
      write(placed[0] - at[0], first);
      write(placed[1] - at[1], false);
      first = false;
    }
    at = placed;
  };
  const moveTo = (to: Point) => {
    if (data === '') {
      at = onGrid(to);
      data = 'M';
      write(at[0], true);
      write(at[1], false);
    } else {
      step('m', [to]);
    }
    start = at;
  };
  return {
    move: moveTo,
    line: to => step('l', [to]),
    bend: (control, to) => step('q', [control, to]),
    curve: (first, second, to) => step('c', [first, second, to]),
    turn: (radiusX, radiusY, to) => step('a', [to], [radiusSteps(radiusX), radiusSteps(radiusY), 0, 0, 1]),
    dot: to => {
      moveTo(to);
      data += 'h0';
    },
    close: () => {
      data += 'z';
      at = start;
    },
    data: () => data,
  };
}

/** A closed line with corners. */
export function polygon(into: Pen, corners: readonly Point[]): void {
  corners.forEach((at, i) => {
    if (i === 0) into.move(at);
    else into.line(at);
  });
  into.close();
}

/** A smooth closed line through points (Catmull and Rom 1974). */
export function smoothLoop(into: Pen, points: readonly Point[]): void {
  const at = (index: number) => points[(index + points.length) % points.length] as Point;
  into.move(at(0));
  for (let i = 0; i < points.length; i += 1) {
    const [before, from, to, after] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    into.curve(
      [from[0] + (to[0] - before[0]) / 6, from[1] + (to[1] - before[1]) / 6],
      [to[0] - (after[0] - from[0]) / 6, to[1] - (after[1] - from[1]) / 6],
      to,
    );
  }
  into.close();
}
