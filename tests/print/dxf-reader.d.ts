/** The part of the second DXF reader that the tests use; it comes without types. */
declare module 'dxf' {
  export class Helper {
    constructor(contents: string);
    readonly parsed: { readonly entities: unknown[] };
  }
}
