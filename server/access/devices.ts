/** The devices that were proved: by their tokens, for as long as these last, until one is removed. */
import { randomBytes } from 'node:crypto'
import type { ListedDevice } from '#lib/access/http.ts'
import { hasRunOut, lastsUntil, REMEMBERED_MS, UNUSED_MS } from '#lib/access/life.ts'
import { MOST_DEVICES } from '#lib/access/tries.ts'
import type { Role } from '#lib/service/roles.ts'
import type { AgeingClock } from '#server/access/ageing-clock.ts'
import { type Device, type House, sha256 } from '#server/access/house.ts'

/** What a token stands for now. */
export type Standing =
  | { readonly is: 'proved'; readonly device: Device }
  | { readonly is: 'expired' | 'removed' }
  | { readonly is: 'unknown' }

export interface NewDevice {
  readonly name: string
  readonly role: Role
  readonly adult: string | null
}

export interface Devices {
  /** A device to be kept, and its token, which is kept nowhere here; null where there are too many. */
  ready(wanted: NewDevice, station: string): { device: Device; token: string } | null
  standing(token: string | null): Standing
  /** Whether a device of that id is proved now. */
  isIn(device: string): boolean
  /** It was used just now. */
  use(device: string): void
  /** Epoch milliseconds of the machine's clock at which it has to join again. */
  until(device: Device): number
  list(you: string): readonly ListedDevice[]
  /** False where there is none of that id. */
  remove(device: string): boolean
  /** It is of another station from now on, for which its connections open anew. False as `remove`. */
  move(device: string, station: string): boolean
  /** It is another device from now on, or none. */
  forget(device: string): void
  /** They are kept as devices no more: their connections have to close. */
  left(devices: readonly string[]): void
  /** A connection of it is open; what is returned tells that it isn't any more. */
  arrive(device: string): () => void
  /** Called with a device whose connections have to close. */
  onGone(listener: (device: string) => void): void
  close(): void
}

const TOKEN = /^[0-9a-f]{12}\.[\w-]{43}$/

/** The house's id, which names its cookie, and 256 random bits. */
export const newToken = (house: string): string =>
  `${house}.${randomBytes(32).toString('base64url')}`

/** A use is written down so often at most: it costs a write to the disk. */
const USED_EVERY_MS = 300_000
const LOOK_EVERY_MS = 1_000

/** @param deps.scripts a device that is kept in memory only, for as long as the server runs */
export const createDevices = ({
  house,
  clock,
  scripts: first,
}: {
  readonly house: House
  readonly clock: AgeingClock
  readonly scripts: Device
}): Devices => {
  const used = new Map<string, number>()
  const here = new Map<string, number>()
  const listeners: ((device: string) => void)[] = []
  let scripts = first
  let scriptsRemoved = false

  const withUse = (device: Device): Device => ({
    ...device,
    seenAt: Math.max(device.seenAt, used.get(device.id) ?? 0),
  })

  const find = (id: string): Device | null => (id === scripts.id ? scripts : house.device(id))

  const sweep = (): void => {
    const now = clock.now()
    for (const device of house.devices()) {
      const { id, removedAt } = device
      const over = removedAt ?? lastsUntil(withUse(device))
      if (now - over >= REMEMBERED_MS) house.forget(id)
    }
  }

  const use = (id: string): void => {
    const now = clock.now()
    const before = used.get(id) ?? find(id)?.seenAt ?? now
    if (now - before < USED_EVERY_MS) return
    used.set(id, now)
    if (id !== scripts.id) house.seen(id, now)
  }

  const gone = (id: string): void => {
    for (const listener of listeners) listener(id)
  }

  const look = (): void => {
    const now = clock.now()
    for (const id of [...here.keys()]) {
      const device = find(id)
      if (!device || (id !== scripts.id && hasRunOut(withUse(device), now))) gone(id)
      else use(id)
    }
  }
  sweep()
  const looking = setInterval(look, LOOK_EVERY_MS).unref()

  return {
    ready: ({ name, role, adult }, station) => {
      sweep()
      const now = clock.now()
      const lasting = house
        .devices()
        .filter((one) => one.removedAt === null && !hasRunOut(withUse(one), now))
      if (lasting.length >= MOST_DEVICES) return null
      const token = newToken(house.id)
      const id = `d-${randomBytes(9).toString('base64url')}`
      const times = { joinedAt: now, seenAt: now, removedAt: null }
      return { token, device: { id, token: sha256(token), name, role, station, adult, ...times } }
    },
    standing: (token) => {
      if (token === null || !TOKEN.test(token)) return { is: 'unknown' }
      const hash = sha256(token)
      if (hash.equals(scripts.token))
        return scriptsRemoved ? { is: 'removed' } : { is: 'proved', device: scripts }
      const device = house.deviceByToken(hash)
      if (device === null) return { is: 'unknown' }
      if (device.removedAt !== null) return { is: 'removed' }
      const known = withUse(device)
      return hasRunOut(known, clock.now()) ? { is: 'expired' } : { is: 'proved', device: known }
    },
    isIn: (id) => {
      if (id === scripts.id) return !scriptsRemoved
      const device = house.device(id)
      return (
        device !== null && device.removedAt === null && !hasRunOut(withUse(device), clock.now())
      )
    },
    use,
    until: (device) =>
      clock.onWall(
        device.id === scripts.id ? clock.now() + UNUSED_MS : lastsUntil(withUse(device)),
      ),
    list: (you) => {
      const now = clock.now()
      const kept = house
        .devices()
        .map(withUse)
        .filter((one) => one.removedAt === null && !hasRunOut(one, now))
      const all = here.has(scripts.id) || you === scripts.id ? [...kept, withUse(scripts)] : kept
      return all.map(({ id, name, role, station, adult, joinedAt, seenAt }) => ({
        device: id,
        name,
        role,
        station,
        joinedAt: clock.onWall(joinedAt),
        seenAt: clock.onWall(here.has(id) ? now : seenAt),
        isHere: here.has(id),
        isYou: id === you,
        adult,
      }))
    },
    remove: (id) => {
      if (id === scripts.id) scriptsRemoved = true
      else if (!house.remove(id, clock.now())) return false
      gone(id)
      return true
    },
    move: (id, station) => {
      if (id === scripts.id) scripts = { ...scripts, station }
      else if (!house.move(id, station)) return false
      gone(id)
      return true
    },
    forget: (id) => {
      if (id === scripts.id) return
      house.forget(id)
      used.delete(id)
      gone(id)
    },
    left: (ids) => {
      for (const id of ids) {
        used.delete(id)
        gone(id)
      }
    },
    arrive: (id) => {
      here.set(id, (here.get(id) ?? 0) + 1)
      let left = false
      return () => {
        if (left) return
        left = true
        const others = (here.get(id) ?? 1) - 1
        if (others > 0) here.set(id, others)
        else here.delete(id)
      }
    },
    onGone: (listener) => {
      listeners.push(listener)
    },
    close: () => {
      clearInterval(looking)
      clock.keep()
    },
  }
}
