/** What /health tells about the service that is open. */
export interface HealthSource {
  /** Version of the wire messages. */
  readonly protocol: number
  /** The service that takes orders now: its id, the log's position, the hash of its folded state. */
  service(): { readonly id: string; readonly position: number; readonly hash: string } | null
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
  menu: '/menu',
  label: '/menu/label',
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
  commits: source.commits(),
  ...(isFromHere ? { pid: process.pid, scriptsToken: source.scriptsToken } : {}),
})
