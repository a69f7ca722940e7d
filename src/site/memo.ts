/** Memoization: views are made once for a catalogue and shared by all pages that show them. */

/** A function of one object, called once for each object: its result is kept as long as the object lives. */
export function memoize<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, V>();
  return key => {
    let value = kept.get(key);
    if (value === undefined) {
      value = make(key);
      kept.set(key, value);
    }
    return value;
  };
}
