/** Drives a running server from a script: JSON lines in, one JSON line out for each, in order. */
import { randomUUID } from 'node:crypto'
import { createInterface } from 'node:readline'
import { parseArgs } from 'node:util'
import { z } from 'zod'
import { ROLES } from '#lib/service/roles.ts'
import { drive as words } from '#lib/words/house/shell-en.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { createDriver } from '#server/shell/driver.ts'
import { joinByCode } from '#server/shell/join-by-code.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'

const { values } = parseArgs({
  options: {
    url: { type: 'string' },
    role: { type: 'string', default: 'lead' },
    'token-file': { type: 'string' },
    code: { type: 'string' },
  },
})

const arguments_ = z
  .object({
    url: z.url({ protocol: /^https?$/ }),
    role: z.enum(ROLES),
    'token-file': z.string().optional(),
    code: z.string().optional(),
  })
  .safeParse(values)

if (!arguments_.success) {
  console.error(words.usage(ROLES.join(', ')))
  process.exit(2)
}

const { url, role, 'token-file': file, code } = arguments_.data

const giveUp = (sentence: string): never => {
  console.error(sentence)
  process.exit(1)
}

const joined = code === undefined ? null : await joinByCode(url, code, words.name)
if (joined !== null && joined.token === null) giveUp(words.notJoined(joined.why))
const token = async () => joined?.token ?? scriptsToken(url, file)
const { client, socket, close } = connectCrew(url, role, token)

/** Not let in ends it at once: asking again helps no one. */
const refused = new Promise<string>((settle) => {
  socket.on('connect_error', (error) => {
    if (!socket.active) settle(error.message)
  })
})

const live = whenView(client, (view) => view.link === 'live').then(
  () => null,
  () => words.noServer(url),
)
const problem = await Promise.race([live, refused.then((why) => words.notLetIn(why))])
if (problem !== null) giveUp(problem)

const answer = createDriver({ client, socket, role, newId: () => randomUUID() })
for await (const line of createInterface({ input: process.stdin })) {
  if (line.trim() === '') continue
  process.stdout.write(`${JSON.stringify(await answer(line))}\n`)
}
close()
