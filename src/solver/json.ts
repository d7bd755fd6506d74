// The form of a schema, apart from the making of one.
/** A JSON Schema (draft 2020-12) as plain data. */
export type JsonSchema = { readonly [key: string]: unknown }
