/** The class of every field of a service's state, as it is sent where the events aren't kept. */
import { AWAY, each, type Fields, kept, list } from '#lib/access/seen/classed.ts'
import {
  CLOCK,
  HEAT_READING,
  HELD_FOOD,
  RUSH,
  SANITIZER,
  STAMP_OF_DATE,
  UNTIL,
} from '#lib/access/seen/food-fields.ts'
import { ACCEPTED, CHOICE, FINDING, NEED, TAKING } from '#lib/access/seen/order-fields.ts'
import { PLAN } from '#lib/access/seen/plan-fields.ts'
import { PREP } from '#lib/access/seen/prep-fields.ts'
import { PORTION, STATION } from '#lib/access/seen/station-fields.ts'
import { STOCK } from '#lib/access/seen/stock-fields.ts'
import type { BackupPan, BatchState, FoodState, HeldStock } from '#lib/service/food-state.ts'
import type { Acceptance, Build, HadBefore, ServiceState, Ticket } from '#lib/service/state.ts'

const HAD: Fields<HadBefore> = {
  took: list(TAKING),
  takes: each('always'),
  madeAt: 'always',
  since: 'always',
  begunIn: 'always',
  madeIn: 'always',
  behind: list('always'),
  choice: CHOICE,
}

const BUILD: Fields<Build> = {
  ...ACCEPTED,
  ...HAD,
  choice: CHOICE,
  state: 'always',
  stop: { reason: 'needs', at: 'always', to: ACCEPTED },
  hold: {
    reason: 'needs',
    at: 'always',
    told: { asked: 'needs', needs: list(NEED) },
    pans: list('always'),
    dropsChange: 'always',
  },
  told: 'needs',
  remakes: 'always',
  version: 'always',
  until: UNTIL,
  screen: 'text',
  tookFrom: 'text',
  had: list(HAD),
  boundTo: 'always',
  setBackSince: 'always',
}

const TICKET: Fields<Ticket> = {
  number: 'always',
  sentBy: 'always',
  named: ['name', false],
  sentAt: 'always',
  paid: ['money', false],
  writtenOff: ['money', AWAY],
  builds: list(kept(BUILD)),
}

const ACCEPTANCE: Fields<Acceptance> = {
  item: 'always',
  food: 'always',
  needs: list({ code: 'needs', handling: 'needs' }),
  findings: list(FINDING),
  reason: 'needs',
  at: 'always',
  build: 'always',
}

/** A reading of heat may stand wherever a reading does: food that was reheated cools, and is held. */
const ANY_READING = HEAT_READING

const OFF_SALE = { why: 'always', since: 'always', lastGoodAt: 'always' } as const

const HELD: Fields<HeldStock> = {
  amount: 'always',
  full: 'always',
  load: 'always',
  counted: 'always',
  loadedAt: 'always',
  loadedIn: 'always',
  soiledBy: list('always'),
  probedIn: each('always'),
  batches: list('always'),
  food: HELD_FOOD,
  since: 'always',
  readings: list(ANY_READING),
  offSale: OFF_SALE,
  ended: 'always',
}

const BACKUP: Fields<BackupPan> = {
  ...HELD,
  component: 'always',
  guarded: 'always',
  kept: 'always',
}

const BATCH: Fields<BatchState> = {
  component: 'always',
  loads: 'always',
  startedAt: 'always',
  finishedAt: 'always',
  firstDone: 'always',
  amount: 'always',
  loadsDone: 'always',
  measured: 'always',
  loaded: 'always',
  cooking: list(HEAT_READING),
  cooked: 'always',
  cookedFor: 'always',
  cooling: list(ANY_READING),
  presentUntil: 'always',
  probedWith: list('always'),
  lot: 'always',
  stoodOpen: 'always',
  soiledBy: list('always'),
  cooledAgain: 'always',
  reheat: {
    place: 'always',
    startedAt: 'always',
    readings: list(HEAT_READING),
    ok: 'always',
    why: 'always',
  },
  clock: CLOCK,
  dateMark: STAMP_OF_DATE,
  readings: list(ANY_READING),
  toldAt: 'always',
  offSale: OFF_SALE,
  thrownOutAt: 'always',
  ended: 'always',
  newestAt: 'always',
}

const FOOD: Fields<FoodState> = {
  probes: each(list({ component: 'always', behind: 'always' })),
  shelf: {
    newest: ANY_READING,
    goodAt: 'always',
    offSale: { since: 'always', lastGoodAt: 'always' },
    missed: { since: 'always', lastGoodAt: 'always' },
  },
  sanitizer: { ...SANITIZER, problem: 'always', at: 'always' },
  batches: each(kept(BATCH)),
  nextBatch: 'always',
  backupPans: each(kept(BACKUP)),
  toThrowOut: each({
    what: 'always',
    id: 'always',
    because: 'always',
    since: 'always',
    rest: { component: 'always', amount: 'always' },
  }),
  toTell: each({
    what: 'always',
    id: 'always',
    because: 'always',
    since: 'always',
    builds: list({ build: 'always', at: 'always' }),
  }),
  rushes: list(RUSH),
  containers: each({ size: 'always', depthIn: 'always', tareMg: 'always' }),
  ends: list({
    ...{ what: 'always', id: 'always', end: 'always', component: 'always' },
    ...{ amount: 'always', how: 'always', at: 'always' },
  } as const),
}

const SINCE = each('always' as const)

export const STATE: Fields<ServiceState> = {
  ...STOCK,
  ...FOOD,
  stage: 'always',
  service: 'always',
  kind: 'always',
  plan: PLAN,
  prep: PREP,
  revision: 'always',
  station: STATION,
  portions: each(PORTION),
  openedAt: 'always',
  closesItselfAt: 'always',
  closedAt: 'always',
  nextTicket: 'always',
  tickets: each(kept(TICKET)),
  past: each(kept(each(kept(TICKET)))),
  pans: each(kept(HELD)),
  accounts: each({
    onTickets: 'always',
    used: 'always',
    wasted: 'always',
    loaded: 'always',
    corrected: 'always',
    takenAway: 'always',
    setAside: 'always',
  }),
  wiped: list({
    where: 'always',
    component: 'always',
    by: 'always',
    from: 'always',
    until: 'always',
  }),
  notSelling: { component: SINCE, item: SINCE },
  inCharge: 'always',
  cautions: each(kept(ACCEPTANCE)),
  nextCaution: 'needs',
  backups: SINCE,
  toFind: each({ ticket: 'always', letter: 'always', reason: 'needs', at: 'always' }),
  mixing: each({ pans: list('always'), before: list('always') }),
  labelVersions: each('always'),
  contactsRevision: 'always',
  labelChanges: list({ ingredient: 'always', at: 'always', read: 'always' }),
  made: 'always',
  handedOver: 'always',
  clockJump: { byMs: 'always', at: 'always', read: SINCE },
  at: 'always',
  position: 'always',
}
