/** What PROTOCOL.md says of what each role is sent: class by role, and the class of every field. */
import { AWAY, toldOf } from '#lib/access/seen/classed.ts'
import { FIELD_CLASSES, type FieldClass, isSent } from '#lib/access/seen/classes.ts'
import { EVENTS, STAMP } from '#lib/access/seen/event-fields.ts'
import {
  ADVICE_REASON,
  CLOCK,
  HEAT_READING,
  HELD_FOOD,
  READING,
  SANITIZER,
  UNTIL,
} from '#lib/access/seen/food-fields.ts'
import { FORECAST } from '#lib/access/seen/forecast-fields.ts'
import { ACCEPTED, CHOICE, FINDING, NEED, TAKING } from '#lib/access/seen/order-fields.ts'
import { STATE } from '#lib/access/seen/state-fields.ts'
import { LABEL, PORTION, STATION_FIELDS, TEMPERATURE } from '#lib/access/seen/station-fields.ts'
import { ROLES } from '#lib/service/roles.ts'

const TELLS: Readonly<Record<FieldClass, string>> = {
  always: 'the work: numbers, times, food, who may do what',
  needs: 'a guest’s needs by code and handling, and what follows from them',
  text: 'what the crew calls a probe or a screen',
  name: 'a guest’s name, and whether there is one',
  money: 'what a guest pays, and whether they have',
  cost: 'what something costs the station, or saves it',
  adult: 'which adult proved to be there',
  initials: 'who read something',
  reason: 'why a guest has a need',
  pack: 'what a pack says, word by word',
}

/** Parts that several have, each told once. */
const PARTS: Readonly<Record<string, object>> = {
  ACCEPTED,
  CHOICE,
  NEED,
  FINDING,
  TAKING,
  READING,
  HEAT_READING,
  TEMPERATURE,
  SANITIZER,
  CLOCK,
  HELD_FOOD,
  UNTIL,
  PORTION,
  LABEL,
  ADVICE_REASON,
  STATION: STATION_FIELDS,
}
const NAME_OF: ReadonlyMap<unknown, string> = new Map(
  Object.entries(PARTS).map(([name, part]) => [part, name]),
)

const ofClass = (fieldClass: FieldClass, instead: unknown): string => {
  if (fieldClass === 'always') return ''
  if (isSent('assembly', fieldClass)) return ` (${fieldClass})`
  return ` (${fieldClass}, else ${instead === AWAY ? 'left away' : JSON.stringify(instead)})`
}

const told = (classed: unknown): string => {
  const name = NAME_OF.get(classed)
  if (name !== undefined) return ` of ${name}`
  const how = toldOf(classed)
  if (how.is === 'plain') return ofClass(how.fieldClass, how.instead)
  return how.is === 'fields' ? ` { ${fieldsOf(how.fields)} }` : told(how.of)
}

const fieldsOf = (fields: readonly (readonly [key: string, of: unknown])[]): string =>
  fields.map(([key, of]) => `\`${key}\`${told(of)}`).join(', ')

const allOf = (classed: object): string => {
  const how = toldOf(classed)
  return how.is === 'fields' ? fieldsOf(how.fields) : ''
}

const line = (name: string, classed: object): string => `- ${name}: ${allOf(classed) || 'nothing'}`

export const fieldsTable = (): string =>
  [
    `| class | what it tells | ${ROLES.map((role) => `\`${role}\``).join(' | ')} |`,
    `| --- | --- | ${ROLES.map(() => '---').join(' | ')} |`,
    ...FIELD_CLASSES.map((one) => {
      const sent = ROLES.map((role) => (isSent(role, one) ? 'sent' : '–'))
      return `| ${one} | ${TELLS[one]} | ${sent.join(' | ')} |`
    }),
    '',
    'The class of every field; `always` where none is said. Of each event, beside its `type`:',
    '',
    line('each of them', STAMP),
    ...Object.entries(EVENTS).map(([type, fields]) => line(`\`${type}\``, fields)),
    '',
    'Of the state and of a forecast:',
    '',
    line('`state`', STATE),
    line('`forecast`', FORECAST),
    '',
    'Parts of these:',
    '',
    ...Object.entries(PARTS).map(([name, part]) => line(name, part)),
  ].join('\n')
