import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { withTables } from '#lib/protocol/tables.ts'
import {
  MOST_COMMAND_BYTES,
  MOST_MESSAGE_BYTES,
  MOST_MESSAGES_A_SECOND,
  PROTOCOL,
  PULSE_EVERY_MS,
} from '#lib/protocol/wire.ts'
import { takeCommand } from '#lib/protocol/wire-schema.ts'
import { ROLES } from '#lib/service/roles.ts'
import { COMMAND_TYPES, MAY } from '#lib/spine/registry.ts'
import { readConfig } from '#server/config.ts'
import { accessRoutes } from '#server/http/access.ts'
import { demoRoutes } from '#server/http/demo.ts'
import { privacyRoutes } from '#server/http/privacy.ts'
import { eventTypes, literalsOf, sorted } from '#tests/support/declared-names.ts'
import { parseSource, root, walk } from '#tests/support/source-tree.ts'

const read = (...path: readonly string[]): string => readFileSync(join(root, ...path), 'utf8')
// A formatter pads the columns of tables; what they say is what is checked.
const plain = (markdown: string): string => markdown.replace(/ {2,}/g, ' ').replace(/-{4,}/g, '---')
const text = read('lib', 'protocol', 'PROTOCOL.md')
const document = plain(text)

const section = (title: string): string =>
  (document.split(/^#{2,3} /m).find((part) => part.startsWith(`${title}\n`)) ?? '').slice(
    title.length,
  )

/** Names in the first column of a section's tables. */
const rowsOf = (title: string): readonly string[] =>
  [...section(title).matchAll(/^\| `(\w[\w-]*)`/gm)].map(([, name = '']) => name)

/** Words of a union that a file names. */
const unionOf = (path: string, name: string): readonly string[] => {
  const found: string[] = []
  walk(parseSource(path, read(path)).program, (node) => {
    if (node.type !== 'TSTypeAliasDeclaration' || node.id.name !== name) return
    walk(node.typeAnnotation, (inner) => {
      if (inner.type === 'TSLiteralType' && inner.literal.type === 'Literal')
        found.push(String(inner.literal.value))
    })
  })
  return found
}

/** Names of an interface's members. */
const membersOf = (path: string, name: string): readonly string[] => {
  const found: string[] = []
  walk(parseSource(path, read(path)).program, (node, above) => {
    const [body, declaration] = above
    if (node.type !== 'TSPropertySignature' || node.key.type !== 'Identifier') return
    if (body?.type !== 'TSInterfaceBody' || declaration?.type !== 'TSInterfaceDeclaration') return
    if (declaration.id.name === name) found.push(node.key.name)
  })
  return found
}

/** Routes are listed without anybody to ask. */
const NO_ACCESS = { access: null as never, secure: false, log: null as never }

describe('PROTOCOL.md', () => {
  test('tells every message, both ways', () => {
    const wire = 'lib/protocol/wire.ts'
    const fromServer = membersOf(wire, 'ServerMessages')
    expect(fromServer).toContain('welcome')
    expect(sorted(rowsOf('What the server says by itself'))).toEqual(sorted(fromServer))
    const fromScreen = membersOf(wire, 'ScreenMessages')
    expect(fromScreen).toContain('follow')
    expect(sorted(rowsOf('What a screen says'))).toEqual(sorted(fromScreen))
    const kinds = literalsOf(wire, 'Followed', 'kind')
    expect(kinds.length).toBeGreaterThan(4)
    for (const kind of kinds) expect(section('Following a service')).toContain(`kind: "${kind}"`)
  })

  test('[V9] tells every command, right and field as declared: npm run protocol writes it', () => {
    expect(plain(withTables(text))).toBe(document)
    expect(() => withTables(text.replace('<!-- end of rights -->', ''))).toThrow('rights')
    expect(() => withTables(`${text}\n${text}`)).toThrow('once')
  })

  test('tells an example of each command that is taken, and who may give it', () => {
    const rows = section('Commands')
      .split('\n')
      .filter((line) => /^\| `\w/.test(line))
    expect(rowsOf('Commands')).toEqual(COMMAND_TYPES)
    for (const row of rows) {
      const [, type = '', who = ''] = /^\| `(\w+)` \| ([^|]+?) \|/.exec(row) ?? []
      const may = ROLES.filter((role) => MAY[role].some((one) => one === type))
      const named = may.filter((role) => role !== 'lead' && role !== 'in-charge')
      const adults = may.includes('lead') ? ['lead'] : ['in-charge']
      expect(who.split(', '), type).toEqual(named.length > 0 ? named : adults)
      const example = /`(\{ "type".*?\})`/.exec(row)?.[1]
      const choice = '{"item":"harbor-tuna","base":"rice","parts":{},"asked":"none","needs":[]}'
      const need = '{"code":"milk","handling":"leave-out","reason":null}'
      const label = '{"declarations":{},"traits":null,"claims":{},"readOn":null,"readBy":null}'
      const command: unknown = JSON.parse(
        (example ?? '').replace('CHOICE', choice).replace('NEED', need).replace('LABEL', label),
      )
      const message = {
        protocol: PROTOCOL,
        id: 'example',
        service: 's-demo',
        command,
        ...(may.includes('lead') ? {} : { passphrase: 'kettle lantern orchard' }),
      }
      expect(takeCommand(message, 'lead'), row).toMatchObject({ taken: true, command: { type } })
    }
  })

  test('its examples in JSON are JSON, and its command messages are taken', () => {
    const examples = [...document.matchAll(/```json\n(.*?)```/gs)].map(
      ([, text = '']): Record<string, unknown> => JSON.parse(text),
    )
    expect(examples.length).toBeGreaterThan(4)
    const commands = examples.flatMap((one) =>
      'command' in one
        ? [one]
        : 'type' in one
          ? [{ protocol: PROTOCOL, id: 'example', service: 's-demo', command: one }]
          : [],
    )
    expect(commands).toHaveLength(2)
    const sent = [...document.matchAll(/^> command +(.*)$/gm)].map(([, text = '']): unknown =>
      JSON.parse(text),
    )
    expect(sent).toHaveLength(1)
    for (const message of [...commands, ...sent])
      expect(takeCommand(message, 'lead')).toMatchObject({ taken: true })
  })

  test('tells every code, each where it belongs', () => {
    const refused = [
      ...['NotLeft', 'Refusal'].flatMap((union) =>
        literalsOf('lib/service/refusal.ts', union, 'code'),
      ),
      ...literalsOf('lib/service/events/plan-refusal.ts', 'PlanRefusal', 'code'),
    ]
    expect(refused.length).toBeGreaterThan(30)
    expect(sorted(rowsOf('Refused'))).toEqual(sorted(refused))
    const [row = ''] = section('Refused')
      .split('\n')
      .filter((line) => line.startsWith('| `unknown` '))
    const told = [...row.matchAll(/`([\w-]+)`/g)].map(([, name = '']) => name)
    const kinds = unionOf('lib/service/refusal.ts', 'Unknown')
    expect(kinds.length).toBeGreaterThan(10)
    expect(sorted(told.filter((one) => !['unknown', 'what', 'id'].includes(one)))).toEqual(
      sorted(kinds),
    )
    const notTaken = literalsOf('lib/service/refusal.ts', 'NotTaken', 'code')
    expect(sorted(rowsOf('Not taken'))).toEqual(sorted(notTaken))
  })

  test('tells every code of who may in, and of who isn’t let in', () => {
    const http = 'lib/access/http.ts'
    const refusals = unionOf(http, 'AccessRefusal')
    expect(refusals.length).toBeGreaterThan(10)
    expect(sorted(rowsOf('Who may in'))).toEqual(sorted(refusals))
    const first = ['Host', 'Origin', 'auth']
    const connecting = rowsOf('Connecting').filter((one) => !first.includes(one))
    expect(sorted(connecting)).toEqual(sorted(unionOf(http, 'ConnectRefusal')))
    const told = [...section('Who may in').matchAll(/^\| `(GET|POST) (\/access[\w/-]*)`/gm)]
    const more = [
      ...privacyRoutes(null as never, null as never),
      ...demoRoutes(null as never, null as never),
    ]
    const routes = accessRoutes({ ...NO_ACCESS, addresses: () => [], more })
    expect(sorted(told.map(([, method, path]) => `${method} ${path}`))).toEqual(
      sorted(routes.map(({ method, path }) => `${method} ${path}`)),
    )
  })

  test('tells every event', () => {
    const events = eventTypes()
    const told = [...section('Events').matchAll(/`([a-z]+[A-Z]\w+)`/g)].map(([, name = '']) => name)
    expect(sorted(told)).toEqual(sorted(events))
  })

  test('tells sizes, rates and the version as they are', () => {
    const sizes = section('Sizes and rates')
    for (const size of [MOST_COMMAND_BYTES, MOST_MESSAGE_BYTES, MOST_MESSAGES_A_SECOND])
      expect(sizes).toContain(size.toLocaleString('en-US'))
    expect(section('What the server says by itself')).toContain(`every ${PULSE_EVERY_MS / 1_000} s`)
    expect(document.startsWith(`# The protocol, version ${PROTOCOL}\n`)).toBe(true)
    expect(section('History')).toMatch(/^\| 1 \| 2026-11-25 \|/m)
    expect(section('History')).toContain(`| ${PROTOCOL} |`)
  })

  test('tells every variable of the environment, with its default', () => {
    const source = read('server', 'config.ts')
    const names = [...source.matchAll(/^ {2}([A-Z_]+): \{$/gm)].map(([, name = '']) => name)
    expect(sorted(rowsOf('Environment'))).toEqual(sorted(names))
    const defaults = readConfig({}, '/')
    const rows = section('Environment')
    if (!defaults.ok) throw new Error('the defaults are wrong')
    const { port, host, logLevel } = defaults.config
    expect(rows).toContain(`| \`PORT\` | ${port} |`)
    expect(rows).toContain(`| \`HOST\` | ${host} |`)
    expect(rows).toContain(`| \`LEVEL_SCOOP_LOG\` | ${logLevel} |`)
  })
})
