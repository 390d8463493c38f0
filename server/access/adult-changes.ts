/** What changes the adults of a house that is made: each by a passphrase that is compared first. */
import { isOnly } from '#lib/access/at-places.ts'
import type { AddAdult, ChangePassphrase, RemoveAdult } from '#lib/access/http.ts'
import type { Adults, Told, Tried } from '#server/access/adults.ts'
import type { AgeingClock } from '#server/access/ageing-clock.ts'
import type { Caller } from '#server/access/caller.ts'
import type { Devices } from '#server/access/devices.ts'
import type { House } from '#server/access/house.ts'
import type { From } from '#server/access/tries.ts'

export interface AdultChanges {
  addAdult(caller: Caller, wanted: AddAdult): Promise<Told>
  changePassphrase(caller: Caller, wanted: ChangePassphrase): Promise<Told>
  removeAdult(caller: Caller, wanted: RemoveAdult): Promise<Told>
}

const refusedBy = (tried: Exclude<Tried, { readonly code: 'right' }>): Told =>
  tried.code === 'too-many-tries' ? tried : { code: 'not-it' }

export const createAdultChanges = ({
  house,
  adults,
  devices,
  clock,
  from,
}: {
  readonly house: House
  readonly adults: Adults
  readonly devices: Pick<Devices, 'left'>
  readonly clock: AgeingClock
  readonly from: (caller: Caller) => From
}): AdultChanges => {
  return {
    addAdult: async (caller, { name, passphrase, role, proof }) => {
      const by = from(caller)
      const tried = await adults.proveInCharge(proof, by)
      if (tried.code !== 'right') return refusedBy(tried)
      return adults.add({ name, passphrase, role }, by)
    },
    changePassphrase: async (caller, { name, before, passphrase }) => {
      if (!house.isMade()) return { code: 'no-house' }
      const by = from(caller)
      const tried = await adults.prove(name, before, by)
      if (tried.code !== 'right') return refusedBy(tried)
      return adults.change(tried.adult, passphrase, by, (kept) => {
        // Somebody who saw the one of before may have signed on with it.
        const gone = house.changePassphrase(tried.adult, kept, by.device)
        if (gone !== null) devices.left(gone)
        return gone !== null
      })
    },
    removeAdult: async (caller, { adult: id, proof }) => {
      if (!house.isMade()) return { code: 'no-house' }
      const tried = await adults.proveInCharge(proof, from(caller))
      if (tried.code !== 'right') return refusedBy(tried)
      const all = house.adults()
      const adult = all.find((one) => one.id === id)
      if (!adult) return { code: 'not-it' }
      if (isOnly(adult, all)) return { code: 'last-one' }
      devices.left(house.removeAdult(id, clock.now()))
      return { code: 'done' }
    },
  }
}
