declare module 'heic-decode' {
  /** The first picture of a file: upright, four bytes a pixel, in the colors of its own profile. Rejects what is no HEIC or is damaged. */
  // biome-ignore lint/style/noDefaultExport: the package has no other
  export default function decode(of: {
    buffer: Uint8Array;
  }): Promise<{ width: number; height: number; data: Uint8ClampedArray }>;
}
