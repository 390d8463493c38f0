/** Drives a running server from a script: JSON lines in, one JSON line out for each, in order. */
import { randomUUID } from 'node:crypto'
import { createInterface } from 'node:readline'
import { parseArgs } from 'node:util'
import { z } from 'zod'
import { ROLES, type Role } from '#lib/service/roles.ts'
import { drive as words } from '#lib/words/house/shell-en.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { createDriver } from '#server/shell/driver.ts'

const { values } = parseArgs({
  options: { url: { type: 'string' }, role: { type: 'string', default: 'lead' } },
})

const arguments_ = z
  .object({ url: z.url({ protocol: /^https?$/ }), role: z.enum(ROLES) })
  .safeParse(values)

if (!arguments_.success) {
  console.error(words.usage(ROLES.join(', ')))
  process.exit(2)
}

const { url, role }: { url: string; role: Role } = arguments_.data
const { client, socket, close } = connectCrew(url, role)

try {
  await whenView(client, (view) => view.link === 'live')
} catch {
  console.error(words.noServer(url))
  process.exit(1)
}

const answer = createDriver({ client, socket, role, newId: () => randomUUID() })
for await (const line of createInterface({ input: process.stdin })) {
  if (line.trim() === '') continue
  process.stdout.write(`${JSON.stringify(await answer(line))}\n`)
}
close()
