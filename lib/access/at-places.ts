/** Devices where they are along the line. */
import type { DeviceList, ListedDevice } from '#lib/access/http.ts'
import type { Role } from '#lib/service/roles.ts'

/** Behind the line, then along it as an order goes. */
export const PLACES: readonly Role[] = [
  'in-charge',
  'lead',
  'counter',
  'assembly',
  'hand-over',
  'pick-up',
]

/** Those that a code lets in; an adult comes by name. */
export const BY_CODE: readonly Role[] = ['lead', 'counter', 'assembly', 'hand-over', 'pick-up']

/** A place's devices: those that are here first (whoever looks is), then by when they came. */
export const devicesAt = (role: Role, devices: readonly ListedDevice[]): readonly ListedDevice[] =>
  devices
    .filter((device) => device.role === role)
    .map((device) => (device.isYou ? { ...device, isHere: true } : device))
    .sort(
      (one, other) => Number(other.isHere) - Number(one.isHere) || one.joinedAt - other.joinedAt,
    )

type Adults = readonly { readonly id: string; readonly role: 'lead' | 'in-charge' }[]

/** Whether nobody else has an adult's role: who is the last stays. */
export const isOnly = ({ id, role }: Adults[number], adults: Adults): boolean =>
  !adults.some((one) => one.role === role && one.id !== id)

/** So few wrong tries are slips of the crew. */
const SLIPS = 10

/** Whether the lead is told of wrong tries: many, or so many that somebody was sent away for them. */
export const areMany = ({ wrong, refused }: DeviceList['attempts']): boolean =>
  wrong > SLIPS || (wrong === SLIPS && refused > 0)

/** A tablet that ran out asks again by itself: hundreds of times until somebody lets it in. */
const STRAYS = 500

/** Whether the lead is told of knocks without a code: more than a forgotten tablet makes. */
export const areKnocks = ({ refused }: DeviceList['attempts']): boolean => refused > STRAYS

/** A name of `names` that no device of the list has; the first again, numbered, where all are taken. */
export const freeName = (
  names: readonly string[],
  taken: readonly string[],
  pick: (count: number) => number,
): string => {
  const free = names.filter((name) => !taken.includes(name))
  const from = free.length > 0 ? free : names
  return from[pick(from.length)] ?? ''
}
