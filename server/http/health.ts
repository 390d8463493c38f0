import type { WhichHouse } from '#lib/access/http.ts'

/** A service: its id, the log's position, the hash of its folded state. */
export interface ServicePlace {
  readonly id: string
  readonly position: number
  readonly hash: string
}

/** What /health tells about the service that is open. */
export interface HealthSource {
  /** Version of the wire messages. */
  readonly protocol: number
  /** The newest service of the first station that is open by default. */
  service(): ServicePlace | null
  /** The newest of each station that has one, of both houses. */
  services(): readonly (ServicePlace & { readonly house: WhichHouse; readonly station: string })[]
  /** Appends committed since the start. */
  commits(): number
  /** Where the token for scripts lies, which only the data folder's owner can read. */
  readonly scriptsToken: string
}

/** Where each screen is, by the job's name. */
export const screens = {
  start: '/',
  counter: '/counter',
  assembly: '/assembly',
  'hand-over': '/hand-over',
  pans: '/pans',
  'pick-up': '/pick-up',
  sheet: '/sheet',
  house: '/house',
  join: '/join',
  devices: '/devices',
  privacy: '/privacy',
  larder: '/larder',
  tasting: '/tasting',
  deliveries: '/deliveries',
  menu: '/menu',
  label: '/menu/label',
  carry: '/menu/carry',
  recipe: '/menu/recipe',
  setUpSheet: '/paper/set-up',
  prepSheet: '/paper/prep',
  packList: '/paper/pack',
  readingsSheet: '/paper/readings',
  purchaseList: '/paper/purchase',
  labels: '/paper/labels',
  larderLabels: '/paper/larder',
  recipeCard: '/paper/recipe',
  allergenPaper: '/paper/allergens',
  plan: '/plan',
  prep: '/prep',
  batches: '/batches',
} as const

export interface About {
  /** Of package.json. */
  readonly version: string
  /** The commit that runs; null outside a clone. */
  readonly revision: string | null
}

/** What is for this machine only: `npm stop` needs the process number, scripts the file's place. */
export const healthAnswer = (about: About, source: HealthSource, isFromHere: boolean) => ({
  version: about.version,
  protocol: source.protocol,
  revision: about.revision,
  screens,
  service: source.service(),
  services: source.services(),
  commits: source.commits(),
  ...(isFromHere ? { pid: process.pid, scriptsToken: source.scriptsToken } : {}),
})
