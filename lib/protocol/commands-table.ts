/** What PROTOCOL.md says of all commands, as they are declared. */
import { CHOICE, LABEL, NEED } from '#lib/service/commands/example-parts.ts'
import { ROLES } from '#lib/service/roles.ts'
import { COMMANDS, ONLY_IN_CHARGE } from '#lib/spine/registry.ts'

const NAMES: ReadonlyMap<unknown, string> = new Map<unknown, string>([
  [CHOICE, 'CHOICE'],
  [NEED, 'NEED'],
  [LABEL, 'LABEL'],
])

/** JSON on one line with spaces; what has a name of its own stands there by that. */
const shown = (example: object): string =>
  JSON.stringify(
    example,
    (_, value: unknown) => (NAMES.has(value) ? `@${NAMES.get(value)}@` : value),
    1,
  )
    .replace(/\n */g, ' ')
    .replaceAll('[ ', '[')
    .replaceAll(' ]', ']')
    .replaceAll('{ }', '{}')
    .replace(/"@(\w+)@"/g, '$1')

const ADULTS = 'lead'

const row = ({ type, who, example, tells }: (typeof COMMANDS)[number]): string => {
  const given = ROLES.filter((role) => who.some((one) => one === role))
  return `| \`${type}\` | ${given.join(', ') || ADULTS} | \`${shown(example)}\`${tells} |`
}

const quoted = (types: readonly string[]): string => {
  const all = types.map((type) => `\`${type}\``)
  return `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`
}

export const commandsTable = (): string =>
  [
    '| command | who | example |',
    '| --- | --- | --- |',
    ...COMMANDS.map(row),
    '',
    `The person in charge (\`in-charge\`), proved by passphrase, may give every command; the lead every one but ${quoted(ONLY_IN_CHARGE)}; the pick-up role none.`,
  ].join('\n')
