/** What the counter says of tickets that were sent, in English. */
import { sayBuild } from '#lib/service/tickets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { foodOf, needName } from '#lib/words/service-en.ts'

type NameOf = (id: string) => string

interface Way {
  readonly fewer: Readonly<Record<string, number>>
  readonly without: readonly string[]
  readonly base: string | null
  readonly item: string | null
}

const sum = (builds: readonly string[], cents: string): string =>
  `${list(builds.map(sayBuild), 'and')}, ${cents}`

export const ticketsEn = {
  tapOne: 'Tap a ticket.',
  chosen: (build: string) => `${sayBuild(build)} is chosen`,
  listed: 'Open tickets',
  keptApart: 'kept apart',
  paid: 'paid',
  unpaid: 'unpaid',
  with: (builds: readonly string[]) => `with ${list(builds.map(sayBuild), 'and')}`,
  shortOf: (components: readonly string[]) =>
    components.length > 2
      ? `short: ${inSentence(components[0] ?? '')} and ${components.length - 1} more`
      : `short: ${components.map(inSentence).join(', ')}`,
  waitsFor: (component: string) => `waits for ${inSentence(component)}`,
  heldRow: 'held',
  stoppedRow: 'stopped for assembly',
  toFindRow: 'find its guest',
  makingRow: 'being made',
  pan: {
    no: 'no',
    gone: 'sold out',
    short: 'short',
    taken: (placement: 'with' | 'side', portions: number) =>
      `${portions > 1 ? `${portions}× ` : ''}${placement === 'with' ? 'with' : 'on the side'}`,
    /** Never the allergen alone, which reads as contains. */
    need: (code: NeedCode) =>
      foodOf(code) === null ? `not ${needName(code)}` : `no ${foodOf(code)}`,
  },
  pay: 'Paid now',
  unpay: 'Not paid',
  paySum: sum,
  unpaySum: (builds: readonly string[], cents: string) => `now paid: ${sum(builds, cents)}`,
  stopsIt: 'it is being made: STOP',
  changeHow: 'what is in it',
  askedAgain: 'asks you first',
  notNow: 'not now',
  noWay: 'Nothing that is left fills it. The guest waits, or it is cancelled.',
  way: ({ fewer, without, base, item }: Way, name: NameOf) => {
    const said = [
      ...Object.entries(fewer).map(
        ([component, portions]) =>
          `${portions === 1 ? 'single' : `${portions}×`} ${inSentence(name(component))}`,
      ),
      ...without.map((component) => `without ${inSentence(name(component))}`),
      ...(base === null ? [] : [`with ${inSentence(name(base))}`]),
      ...(item === null ? [] : [`${name(item)} instead`]),
    ]
    const all = list(said, 'and')
    return `${all.charAt(0).toUpperCase()}${all.slice(1)}`
  },
  wayOf: (build: string, way: Way, name: NameOf) =>
    `${sayBuild(build)}: ${ticketsEn.way(way, name)}`,
  arrived: {
    title: 'Sent: tell the guest, then tap',
    more: (count: number) => `+${count}`,
    ticket: (number: number) => `Ticket ${number}`,
    changed: (build: string) => `${sayBuild(build)} changed`,
    cancelled: (build: string) => `${sayBuild(build)} cancelled`,
    items: (items: readonly string[]) => list(items, 'and'),
    short: ([first, ...others]: readonly string[]) =>
      others.length > 0 ? `${first} +${others.length}` : first,
    told: (what: string, items: string) =>
      items === '' ? `${what}: told, put away` : `${what}, ${inSentence(items)}: told, put away`,
  },
} as const
