/** Writes what PROTOCOL.md says of commands, as they are declared. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { withCommands } from '#lib/protocol/commands-table.ts'
import { root } from '#server/clone.mjs'

const path = join(root, 'lib', 'protocol', 'PROTOCOL.md')
writeFileSync(path, withCommands(readFileSync(path, 'utf8')))
