import type { Choose, FoodTask } from '#components/job/chosen.ts'
import shared from '#components/job/panel.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { EyeCheck, type Look } from '#components/pans/eye-check.tsx'
import styles from '#components/pans/pan-home.module.css'
import { useSettled } from '#components/ui/settled.ts'
import { needsReading } from '#lib/rooms/food/facts/food-now.ts'
import { portionsKept } from '#lib/rooms/pans/facts/kept.ts'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'
import type { Pan } from '#lib/station/station-document.ts'

interface PanHomeProps {
  readonly state: RunningState
  readonly pan: Pan
  readonly picture: PanPicture
  /** "chicken scoops run 8 % heavy"; '' where that can't be told. */
  readonly bias: string
  readonly acting: Acting
  readonly choose: Choose
  readonly onMode: (mode: 'count' | 'selling' | 'scoop') => void
  readonly onBack: () => void
}

/** All that can be done with a pan: one look, one large way on, and the others small. */
export function PanHome(props: PanHomeProps) {
  const words = useFoodWords()
  const { state, pan, picture, bias, acting, choose, onMode, onBack } = props
  const settled = useSettled(pan.id)
  const component = componentOf(state.station, pan.component)
  const held = state.pans[pan.id]
  const isEmpty = picture.amount === 0
  const heldBy = held?.food?.heldBy ?? component.held
  const keep = state.keeps[pan.component]
  const kept = keep ? portionsKept(keep) : 0
  const isScooped = 'gPerCup' in component.portion
  const isStoodIn = state.standIns[pan.component] !== undefined
  const hasBackups = state.station.backups.some((one) => one.component === pan.component)
  const open = (food: FoodTask) => () => choose({ kind: 'food', food })

  const look = async (quarters: Look) => {
    if (!settled() || acting.busy) return
    const done = words.done.looked(component.name, words.looks[quarters])
    if (await acting.act({ type: 'correct', pan: pan.id, quarters }, done)) onBack()
  }
  const endSaving = () => {
    const done = words.done.savingEnded(component.name)
    if (!acting.busy) void acting.act({ type: 'endKeep', component: pan.component }, done)
  }
  const main =
    picture.trouble === 'throw-out'
      ? { label: words.toThrowOut, food: { task: 'throw-out', early: null } as const }
      : picture.trouble === 'off-sale'
        ? {
            label: words.whatMayBeDone,
            food: { task: 'resolve', what: 'pan', id: pan.id } as const,
          }
        : picture.trouble === 'unread'
          ? {
              label: words.readTemperature,
              food: { task: 'read', what: 'pan', id: pan.id } as const,
            }
          : {
              label: isEmpty ? words.loadPan : words.changePan,
              food: { task: 'put', pan: pan.id, way: isEmpty ? 'load' : 'change' } as const,
            }
  const hasFood = !isEmpty && picture.trouble !== 'throw-out'
  const others: readonly { label: string; act: () => void; off?: boolean }[] = [
    ...(needsReading(heldBy)
      ? [
          {
            label: words.readTemperature,
            act: open({ task: 'read', what: 'pan', id: pan.id }),
            off: !hasFood,
          },
        ]
      : []),
    {
      label: words.topUp,
      act: open({ task: 'put', pan: pan.id, way: 'top-up' }),
      off: !hasFood || picture.trouble !== null,
    },
    ...(picture.unit === 'mg'
      ? [{ label: words.weigh, act: open({ task: 'weigh', pan: pan.id }), off: !hasFood }]
      : []),
    { label: words.correct, act: () => onMode('count'), off: isEmpty && !held?.ended },
    { label: words.waste, act: open({ task: 'waste', pan: pan.id }), off: isEmpty },
    kept > 0
      ? { label: words.endSaving(kept), act: endSaving }
      : { label: words.saveSome, act: open({ task: 'keep', component: pan.component }) },
    ...(isScooped
      ? [
          {
            label: isStoodIn ? words.scoopBack : words.scoopMissing,
            act: open({ task: 'scoop', component: pan.component }),
          },
        ]
      : []),
    { label: words.wrongScoop, act: () => onMode('scoop') },
  ]

  return (
    <>
      <div className={styles.home}>
        <EyeCheck busy={acting.busy || !hasFood} onLook={(quarters) => void look(quarters)} />
        <div className={styles.others}>
          {others.map(({ label, act, off }) => (
            <button key={label} type="button" disabled={off === true} onClick={act}>
              {label}
            </button>
          ))}
        </div>
      </div>
      <div className={styles.acts}>
        <button
          type="button"
          className={picture.trouble === null ? shared.main : shared.stop}
          disabled={acting.busy}
          onClick={open(main.food)}
        >
          {main.label}
        </button>
        {bias !== '' && <p className={styles.bias}>{bias}</p>}
        <div className={styles.two}>
          {hasBackups && (
            <button type="button" className={shared.other} onClick={open({ task: 'behind' })}>
              {words.behindIt}
            </button>
          )}
          {hasFood &&
            heldBy !== 'dry' &&
            heldBy !== 'time' &&
            state.station.safety.timeProcedure && (
              <button
                type="button"
                className={shared.other}
                onClick={open({ task: 'clock', what: 'pan', id: pan.id })}
              >
                {words.startClock}
              </button>
            )}
          <button type="button" className={shared.other} onClick={() => onMode('selling')}>
            {picture.selling ? words.stopSelling : words.resumeSelling}
          </button>
        </div>
      </div>
    </>
  )
}
