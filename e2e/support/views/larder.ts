/** Food between services, on a lead's device. The server's answers are told, so that nothing is written. */
import type { Page } from '@playwright/test'
import type { LarderShown, LotShown } from '#lib/larder/shelf-view.ts'
import { lotLabelWords } from '#lib/rooms/care/words/lot-label-en.ts'
import type { ServicesHere } from '#lib/rooms/day/views/services-here.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { larderScreen as words } from '#lib/words/larder/screen-en.ts'
import { takeWords } from '#lib/words/larder/take-en.ts'
import { on, type View } from './view.ts'

const HOUR = 3_600_000
const NOW = Date.parse('2026-12-03T19:10:00Z')

const lot = (id: string, name: string, more: Partial<LotShown> = {}): LotShown => ({
  ...{ lot: id, component: id, name, station: 'alder-hall', amount: 1_247_000, unit: 'mg' },
  ...{ kept: 'cold', place: null, setAsideAt: NOW - 26 * HOUR, lastDay: '2026-12-08' },
  ...{ daysLeft: null, newest: null, next: { what: 'reading', at: NOW + 3 * HOUR } },
  ...{ presentUntil: null, bound: null, barred: null, isFirst: true, stoodOpen: false },
  ...{ soiledBy: [], relabelled: [], timeZone: 'America/Chicago', scale: 'F' },
  label: {
    ...{ madeOf: [], before: [], touched: [], cooledFrom: 'cooked', cooling: [] },
    ...{ startedAt: null, finishedAt: null, endsAt: null, limits: {}, useBy: null },
    ...{ allergens: null, listed: [] },
  },
  ...more,
})

export const LOTS: readonly LotShown[] = [
  lot('tuna', 'Tuna salad', { bound: 'date', isFirst: false, next: null, lastDay: '2026-12-02' }),
  lot('peppers', 'Roast peppers', {
    ...{ kept: 'cooling', presentUntil: NOW + 6 * HOUR, isFirst: false },
    next: { what: 'stage', stage: 2, at: NOW + 4 * HOUR },
  }),
  lot('slaw', 'Sesame slaw', {
    barred: { code: 'lot-unread', since: NOW - 26 * HOUR },
    isFirst: false,
  }),
  lot('yogurt', 'Lemon yogurt sauce'),
  lot('pita', 'Pita', { ...{ kept: 'dry', unit: 'piece', amount: 22, lastDay: null, next: null } }),
  lot('chicken', 'Herb chicken', { kept: 'frozen', daysLeft: 3, next: null, isFirst: false }),
]

/** Its pack was another by the label that is read now. */
const RELABELLED: readonly LotShown[] = [
  lot('dressed', 'Sesame slaw', {
    relabelled: [
      {
        ...{ ingredient: 'soy-sauce', name: 'Soy sauce', version: 2 },
        was: {
          ...{ declarations: { wheat: 'contains', soy: 'contains' }, traits: ['gluten-grain'] },
          ...{ claims: {}, readOn: '2026-11-20', readBy: null },
        },
        is: {
          ...{ declarations: { wheat: 'contains', soy: 'contains', peanut: 'may-contain' } },
          ...{ traits: ['gluten-grain'], claims: {}, readOn: '2026-12-02', readBy: null },
        },
      },
    ],
  }),
]

/** Older and younger of one food: the older one's label is open. */
const BEHIND: readonly LotShown[] = [
  ...RELABELLED.map((one) => ({ ...one, component: 'slaw', lastDay: '2026-12-06' })),
  lot('younger', 'Sesame slaw', { component: 'slaw', isFirst: false }),
]

const READ: Omit<Reading, 'at'> = {
  ...{ probe: 'probe 1', where: 'middle-stirred', initialled: true },
  temperature: { tenths: 1500, scale: 'F' },
}

/** It cools, and nobody said to be there as its next stage ends. */
const UNATTENDED: readonly LotShown[] = [
  lot('beans', 'Black beans', {
    ...{ kept: 'cooling', presentUntil: NOW - HOUR / 2, isFirst: false },
    next: { what: 'stage', stage: 1, at: NOW + HOUR },
    label: {
      ...{ madeOf: [], before: [], touched: [], cooledFrom: 'cooked', startedAt: null },
      ...{ cooling: [{ ...READ, at: NOW - HOUR }], finishedAt: null, endsAt: null, limits: {} },
      ...{ useBy: null, allergens: null, listed: [] },
    },
  }),
]

const SERVICES: ServicesHere = {
  station: { id: 'alder-hall', timeZone: 'America/Chicago' },
  followed: { service: 's-open', isOpen: true },
  at: NOW,
  planned: [
    {
      ...{ service: 's-friday', kind: 'real', on: '2026-12-04', batches: 0 },
      ...{ doorsOpen: '11:20', doorsClose: '12:20' },
      ...{ opensAt: NOW + 22 * HOUR, closesAt: NOW + 23 * HOUR },
    },
  ],
}

export const toldLots =
  (lots: readonly LotShown[]) =>
  (view: View): View => ({
    ...view,
    asLead: true,
    reach: async (page: Page) => {
      const shown: LarderShown = { now: NOW, position: 1, clockJumpedBy: null, lots, slips: [] }
      await page.route('**/larder/now', (route) => route.fulfill({ json: shown }))
      await page.route('**/services', (route) => route.fulfill({ json: SERVICES }))
      await page.reload()
      await view.reach?.(page)
    },
    leaves: async (page: Page) => {
      await page.unroute('**/larder/now')
      await page.unroute('**/services')
    },
  })

const larder = on('/larder', 'larder')
const JOBS = { isWhole: true, isWholeOnPhone: true } as const

export const larderViews: readonly View[] = [
  toldLots([])(larder('empty', 'quiet', words.empty, [], JOBS)),
  toldLots(LOTS)(larder('all shelves', 'quiet', words.shelves.frozen)),
  toldLots(LOTS)(larder('past its date', 'quiet', words.throwOut, [/^Tuna salad/], JOBS)),
  toldLots(LOTS)(larder('cooling', 'quiet', words.read, [/^Roast peppers/], JOBS)),
  toldLots(LOTS)(larder('cold, unread', 'quiet', words.read, [/^Sesame slaw/], JOBS)),
  toldLots(LOTS)(larder('taken', 'quiet', /^Take it into/, [/^Lemon yogurt/], JOBS)),
  toldLots(RELABELLED)(
    larder('a label changed', 'quiet', lotLabelWords.which, [/^Sesame slaw/], {}),
  ),
  toldLots(BEHIND)(larder('behind a label', 'quiet', takeWords.toOlder, [/Tue, Dec 8/], JOBS)),
  toldLots(UNATTENDED)(larder('cooling, nobody stays', 'quiet', words.whoStays, [/^Black/], JOBS)),
  toldLots(LOTS)(larder('frozen', 'quiet', words.thaw, [/^Herb chicken/], JOBS)),
]
