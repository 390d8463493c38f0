import styles from '#components/access/devices-at.module.css'
import { useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { isOnly } from '#lib/access/at-places.ts'
import type { DeviceList } from '#lib/access/http.ts'
import type { Role } from '#lib/service/roles.ts'

export type ListedAdult = DeviceList['adults'][number]

/** What is done to the adults of a place. */
export type AskedOfAdults =
  | { readonly to: 'add' }
  | { readonly to: 'change' | 'take-out'; readonly adult: ListedAdult; readonly devices: number }

/** Who answers for a place, and where they signed on. */
export function AdultRows({
  role,
  list,
  onAdult,
}: {
  readonly role: Role
  readonly list: DeviceList
  readonly onAdult: (asked: AskedOfAdults) => void
}) {
  const { devices: words, passphrase } = useAccessWords()
  const adults = list.adults.filter((adult) => adult.role === role)
  if (adults.length === 0) return null
  return (
    <ul className={styles.list} aria-label={words.adults}>
      {adults.map((adult) => {
        const devices = list.devices.filter((device) => device.adult === adult.id).length
        const isStaying = isOnly(adult, list.adults)
        return (
          <li key={adult.id}>
            <p>
              <b>{adult.name}</b> {words.signedOnAt(devices)}
              {isStaying && (
                <span>{adult.role === 'lead' ? words.onlyLead : words.onlyInCharge}</span>
              )}
            </p>
            <Button
              kind="quiet"
              aria-label={words.changeOf(adult.name)}
              onClick={() => onAdult({ to: 'change', adult, devices })}
            >
              {passphrase.passphrase}
            </Button>
            {!isStaying && (
              <Button
                kind="quiet"
                aria-label={words.takeOutOf(adult.name)}
                onClick={() => onAdult({ to: 'take-out', adult, devices })}
              >
                {words.takeOut}
              </Button>
            )}
          </li>
        )
      })}
    </ul>
  )
}
