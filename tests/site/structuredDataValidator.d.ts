/** The part of @adobe/structured-data-validator that the tests use; the package comes without types. */
declare module '@adobe/structured-data-validator' {
  interface Issue {
    issueMessage: string;
    severity: 'ERROR' | 'WARNING';
  }
  // biome-ignore lint/style/noDefaultExport: this is how the package does it.
  export default class Validator {
    validate(data: { jsonld: object; microdata: object; rdfa: object }): Promise<Issue[]>;
  }
}
