/**
 * What is kept of people and of the house: where, until when, and who sees it. The program follows
 * this table: server/privacy counts and deletes by it, a row it has no way for doesn't compile, and a
 * table, a file or a key of storage without a row fails a test.
 */
import type { ApartKind } from '#lib/access/apart.ts'
import type { Role } from '#lib/service/roles.ts'

/** What of the house's file is told here, a row each. */
export type HouseTable =
  | 'service_records'
  | 'stations'
  | 'draft_rows'
  | 'published'
  | 'labels'
  | 'photos'
  | 'house'
  | 'adults'
  | 'devices'
  | 'join_codes'
  | 'retention'
  | 'tastings'
  | 'measured_yields'
  | 'yield_marks'

/** Where it lies: a table of a file, or a file, in the data folder; or in a browser. */
export type Where =
  | { readonly file: 'guests.db'; readonly tables: readonly ['apart']; readonly kind: ApartKind }
  | { readonly file: 'log.db'; readonly tables: readonly string[] }
  | { readonly file: 'house.db'; readonly tables: readonly HouseTable[] }
  | { readonly file: 'server.json' | 'scripts-token' | 'demo' }
  | {
      readonly browser: 'IndexedDB' | 'localStorage' | 'sessionStorage'
      readonly keys: readonly string[]
    }

/**
 * `close`: of the service. `tasted`: as a tasting ends, or a day after it was to. `retention`: so many days after it. `stop`: of the server. `replaced`: by
 * what comes after it. `removed`: by the lead, or when its life is over. `acknowledged`: by the server.
 * `forgotten`: by its device.
 */
export type Until =
  | 'close'
  | 'tasted'
  | 'retention'
  | 'stop'
  | 'replaced'
  | 'removed'
  | 'always'
  | 'acknowledged'
  | 'forgotten'

export interface KeptRow {
  readonly id: string
  readonly where: Where
  readonly until: Until
  /** Who is shown it; nobody where empty. `own`: the device on which it lies. */
  readonly sees: readonly (Role | 'own')[]
  /** Whether "forget this guest" takes it out at once. */
  readonly forgets: boolean
}

const CREW = ['counter', 'assembly', 'hand-over', 'lead', 'in-charge'] as const

const LEADS = ['lead', 'in-charge'] as const

const apart = <const Kind extends ApartKind>(kind: Kind) =>
  ({ file: 'guests.db', tables: ['apart'], kind }) as const

export const KEPT = [
  {
    id: 'names',
    where: apart('name'),
    until: 'close',
    sees: ['counter', 'hand-over', 'lead', 'in-charge'],
    forgets: true,
  },
  { id: 'reasons', where: apart('reasons'), until: 'close', sees: ['in-charge'], forgets: true },
  { id: 'texts', where: apart('text'), until: 'close', sees: ['in-charge'], forgets: true },
  { id: 'initials', where: apart('initials'), until: 'retention', sees: [], forgets: false },
  { id: 'tasters', where: apart('needs'), until: 'tasted', sees: LEADS, forgets: false },
  {
    id: 'streams',
    where: { file: 'log.db', tables: ['services', 'entries', 'answers'] },
    until: 'retention',
    sees: CREW,
    forgets: false,
  },
  {
    // In the tables of streams: one of its own, that no service's end takes away.
    id: 'larder',
    where: { file: 'log.db', tables: [] },
    until: 'always',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'guards',
    where: { file: 'log.db', tables: ['guards'] },
    until: 'always',
    sees: [],
    forgets: false,
  },
  {
    id: 'records',
    where: { file: 'house.db', tables: ['service_records'] },
    until: 'always',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'tastings',
    where: { file: 'house.db', tables: ['tastings', 'measured_yields', 'yield_marks'] },
    until: 'always',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'stations',
    where: { file: 'house.db', tables: ['stations'] },
    until: 'always',
    sees: CREW,
    forgets: false,
  },
  {
    id: 'drafts',
    where: { file: 'house.db', tables: ['draft_rows', 'published'] },
    until: 'always',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'labels',
    where: { file: 'house.db', tables: ['labels'] },
    until: 'always',
    sees: CREW,
    forgets: false,
  },
  {
    id: 'photos',
    where: { file: 'house.db', tables: ['photos'] },
    until: 'always',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'house',
    where: { file: 'house.db', tables: ['house'] },
    until: 'always',
    sees: [],
    forgets: false,
  },
  {
    id: 'adults',
    where: { file: 'house.db', tables: ['adults'] },
    until: 'replaced',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'devices',
    where: { file: 'house.db', tables: ['devices'] },
    until: 'removed',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'codes',
    where: { file: 'house.db', tables: ['join_codes'] },
    until: 'removed',
    sees: [],
    forgets: false,
  },
  {
    id: 'retention',
    where: { file: 'house.db', tables: ['retention'] },
    until: 'replaced',
    sees: ['lead', 'in-charge'],
    forgets: false,
  },
  {
    id: 'demo',
    where: { file: 'demo' },
    until: 'removed',
    sees: CREW,
    forgets: false,
  },
  { id: 'scripts', where: { file: 'scripts-token' }, until: 'stop', sees: [], forgets: false },
  { id: 'running', where: { file: 'server.json' }, until: 'stop', sees: [], forgets: false },
  {
    id: 'waiting',
    where: { browser: 'IndexedDB', keys: ['level-scoop'] },
    until: 'acknowledged',
    sees: ['own'],
    forgets: false,
  },
  {
    id: 'half-typed',
    where: { browser: 'sessionStorage', keys: ['level-scoop/order'] },
    until: 'acknowledged',
    sees: ['own'],
    forgets: false,
  },
  {
    id: 'hands',
    where: {
      browser: 'localStorage',
      keys: ['level-scoop/initials', 'level-scoop/probe', 'level-scoop/probe-in-the-middle'],
    },
    until: 'forgotten',
    sees: ['own'],
    forgets: false,
  },
  {
    id: 'device',
    where: {
      browser: 'localStorage',
      keys: [
        'level-scoop/device',
        'level-scoop/assembly',
        'level-scoop/sound',
        'level-scoop/px-per-mm',
        'level-scoop/label-paper',
      ],
    },
    until: 'forgotten',
    sees: ['own'],
    forgets: false,
  },
  {
    id: 'reloaded',
    where: { browser: 'sessionStorage', keys: ['level-scoop/reloaded-for'] },
    until: 'forgotten',
    sees: ['own'],
    forgets: false,
  },
] as const satisfies readonly KeptRow[]

export type Kept = (typeof KEPT)[number]
export type KeptId = Kept['id']

/** Rows of a kind, by what they say of themselves. */
export type KeptThat<Saying> = Extract<Kept, Saying>['id']
