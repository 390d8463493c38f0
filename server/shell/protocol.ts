/** Writes what PROTOCOL.md says of commands, rights and fields, as they are declared. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { withTables } from '#lib/protocol/tables.ts'
import { root } from '#server/clone.mjs'

const path = join(root, 'lib', 'protocol', 'PROTOCOL.md')
writeFileSync(path, withTables(readFileSync(path, 'utf8')))
