import { useState } from 'react'
import styles from '#components/counter/need-detail.module.css'
import frame from '#components/counter/step.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { staysApart } from '#lib/rooms/orders/views/changing.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { groupOf, kindsOf } from '#lib/station/codes/askable.ts'
import { type Need, type NeedCode, REASONS } from '#lib/station/codes/codes.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface NeedDetailProps {
  readonly station: StationDocument
  readonly needs: readonly Need[]
  readonly kept: readonly Need[]
  readonly tap: (act: Act) => void
  readonly close: () => void
}

const has = (needs: readonly Need[], code: NeedCode): boolean =>
  needs.some((one) => one.code === code)

/** One need closer: one kind only, how strict, and why. */
export function NeedDetail({ station, needs, kept, tap, close }: NeedDetailProps) {
  const words = useCounterWords()
  const [shown, setShown] = useState(needs.at(-1)?.code ?? '')
  const need = needs.find((one) => one.code === shown) ?? needs.at(-1)
  if (!need) return null
  const group = groupOf(station, need.code) ?? need.code
  const kinds = kindsOf(station, group)
  const isWhole = needs.some((one) => one.code === group)
  return (
    <div className={frame.upper}>
      <div className={frame.side}>
        <Button kind="main" size="large" onClick={close}>
          {words.needs.done}
        </Button>
      </div>
      <div className={styles.detail}>
        {needs.length === 1 ? (
          <p className={styles.about}>{words.needTile(need.code)}</p>
        ) : (
          <div className={styles.rows}>
            {needs.map((one) => (
              <button
                key={one.code}
                type="button"
                className={styles.choice}
                data-handling={one.handling}
                aria-pressed={one.code === need.code}
                onClick={() => setShown(one.code)}
              >
                {words.needTile(one.code)}
              </button>
            ))}
          </div>
        )}
        <div className={styles.both}>
          <Choice
            legend={words.needs.handling}
            chosen={need.handling}
            ways={[
              {
                id: 'keep-apart',
                label: words.needs.keepApart,
                more: words.needs.keepApartWhy,
                isCare: true,
              },
              {
                id: 'leave-out',
                label: words.needs.leaveOut,
                more: words.needs.leaveOutWhy,
                off: staysApart(kept, need.code),
              },
            ]}
            onChoose={(handling) => {
              if (need.handling !== handling) tap({ act: 'handling', code: need.code })
            }}
          />
          <fieldset className={styles.rows}>
            <legend>{words.needs.reason}</legend>
            {REASONS.map((reason) => (
              <button
                key={reason}
                type="button"
                className={styles.choice}
                aria-pressed={need.reason === reason}
                onClick={() => tap({ act: 'reason', code: need.code, reason })}
              >
                {words.needs.reasons[reason]}
              </button>
            ))}
          </fieldset>
        </div>
        {kinds.length > 0 && (
          <fieldset className={styles.rows} data-kinds="">
            <legend>{words.needs.kinds}</legend>
            <button
              type="button"
              className={styles.choice}
              aria-pressed={isWhole}
              onClick={() => {
                if (isWhole) return
                setShown(group)
                // The first tap takes back the kinds that were told, those that stay apart.
                if (kinds.some((code) => has(needs, code) && !has(kept, code)))
                  tap({ act: 'need', code: group })
                tap({ act: 'need', code: group })
              }}
            >
              {words.needs.all}
            </button>
            {kinds.map((code) => (
              <button
                key={code}
                type="button"
                className={styles.choice}
                aria-pressed={has(needs, code)}
                disabled={has(kept, code)}
                onClick={() => {
                  setShown(code)
                  tap({ act: 'kind', group, code })
                }}
              >
                {words.needTile(code)}
              </button>
            ))}
          </fieldset>
        )}
      </div>
    </div>
  )
}
