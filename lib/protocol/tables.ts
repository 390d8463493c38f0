/** PROTOCOL.md with all that is written in it by the program. */
import { commandsTable } from '#lib/protocol/commands-table.ts'
import { fieldsTable } from '#lib/protocol/fields-table.ts'
import { askersTable, rightsTable } from '#lib/protocol/rights-table.ts'
import { withPart } from '#lib/protocol/written-part.ts'

const PARTS: readonly (readonly [name: string, written: () => string])[] = [
  ['commands', commandsTable],
  ['askers', askersTable],
  ['rights', rightsTable],
  ['fields', fieldsTable],
]

/** The document with its tables as they are declared. @throws where it has no place for them */
export const withTables = (document: string): string =>
  PARTS.reduce((so, [name, written]) => withPart(so, name, written()), document)
