/** Waiting for several things that write into one folder. */

/** What all of them give. Throws the first problem, once every one has ended and none writes any more. */
export async function allEnded<T extends readonly unknown[] | []>(
  works: T,
): Promise<{ -readonly [K in keyof T]: Awaited<T[K]> }> {
  await Promise.allSettled(works);
  return Promise.all(works);
}
