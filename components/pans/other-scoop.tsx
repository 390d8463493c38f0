import type { Acting } from '#components/live/acting.ts'
import styles from '#components/pans/panel.module.css'
import { useSettled } from '#components/ui/settled.ts'
import { pansOf } from '#lib/menu/find.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { Pan } from '#lib/menu/station-document.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'

interface OtherScoopProps {
  readonly state: RunningState
  readonly pan: Pan
  readonly acting: Acting
  readonly onDone: () => void
  readonly onBack: () => void
}

/** Whose scoop went into the pan: one tap, in the order of the line. */
export function OtherScoop({ state, pan, acting, onDone, onBack }: OtherScoopProps) {
  const settled = useSettled(pan.id)
  const name = nameIn(state.station)
  const others = [...new Set(pansOf(state.station).map((one) => one.component))].filter(
    (one) => one !== pan.component,
  )
  const soil = async (by: string) => {
    if (!settled() || acting.busy) return
    const done = words.done.soiled(name(pan.component), name(by))
    if (await acting.act({ type: 'soilPan', pan: pan.id, by }, done)) onDone()
  }
  return (
    <div className={styles.whole}>
      <h3>{words.whoseScoop}</h3>
      <p>{words.whoseScoopWhy(name(pan.component))}</p>
      <div className={styles.scoops}>
        {others.map((one) => (
          <button
            key={one}
            type="button"
            disabled={acting.busy || state.pans[pan.id]?.soiledBy.includes(one)}
            onClick={() => void soil(one)}
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
