import { useState } from 'react'
import styles from '#components/job/panel.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { useSettled } from '#components/ui/settled.ts'
import { hasBackup } from '#lib/rooms/care/facts/soiling.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { Pan } from '#lib/station/station-document.ts'

interface OtherScoopProps {
  readonly state: RunningState
  readonly pan: Pan
  readonly acting: Acting
  readonly onDone: () => void
  readonly onBack: () => void
}

/** Whose scoop went into the pan: one tap, in the order of the line. */
export function OtherScoop({ state, pan, acting, onDone, onBack }: OtherScoopProps) {
  const words = useFoodWords()
  const [scoop, setScoop] = useState<string | null>(null)
  const settled = useSettled(`${pan.id} ${scoop}`)
  const name = nameIn(state.station)
  const isSoiledBy = (by: string) => state.pans[pan.id]?.soiledBy.includes(by) ?? false
  const others = [...new Set(pansOf(state.station).map((one) => one.component))].filter(
    (one) => one !== pan.component,
  )
  const isBehind = hasBackup(state, pan.component)
  const soil = async (by: string, backup: boolean) => {
    if (!settled() || acting.busy) return
    const said = backup ? words.done.soiledBackup : words.done.soiled
    const which = backup ? { backup } : {}
    const command = { type: 'soilPan', pan: pan.id, by, ...which } as const
    if (await acting.act(command, said(name(pan.component), name(by)))) onDone()
  }
  if (scoop !== null)
    return (
      <div className={styles.whole}>
        <h3>{words.whichPan(name(pan.component))}</h3>
        <p>{words.whoseScoopWhy(name(pan.component))}</p>
        <div className={styles.which}>
          {[false, true].map((backup) => (
            <button
              key={String(backup)}
              type="button"
              disabled={acting.busy || (!backup && isSoiledBy(scoop))}
              onClick={() => void soil(scoop, backup)}
            >
              {backup ? words.coveredBackup : words.onTheLine}
            </button>
          ))}
          <button type="button" data-kind="none" onClick={() => setScoop(null)}>
            {words.back}
          </button>
        </div>
      </div>
    )
  return (
    <div className={styles.whole}>
      <h3>{words.whoseScoop}</h3>
      <p>{words.whoseScoopWhy(name(pan.component))}</p>
      <div className={styles.scoops}>
        {others.map((one) => (
          <button
            key={one}
            type="button"
            disabled={acting.busy || (!isBehind && isSoiledBy(one))}
            onClick={() => (isBehind ? settled() && setScoop(one) : void soil(one, false))}
          >
            {name(one)}
          </button>
        ))}
        <button type="button" data-kind="none" onClick={onBack}>
          {words.notThis}
        </button>
      </div>
    </div>
  )
}
