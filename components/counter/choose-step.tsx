import styles from '#components/counter/choose.module.css'
import { ItemRows } from '#components/counter/item-rows.tsx'
import { OrderBar } from '#components/counter/order-bar.tsx'
import { PanChoice } from '#components/counter/pan-choice.tsx'
import { ReadBackPanel } from '#components/counter/read-back-panel.tsx'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useWanted } from '#components/counter/use-wanted.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useNarrow } from '#components/device/use-device.ts'
import { Line } from '#components/line/line.tsx'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { panFace } from '#lib/rooms/orders/views/counter.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { isPanWanted } from '#lib/rooms/orders/views/wanted-gone.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** The menu as a grid over the line, the pans below, and what is said of it. */
export function ChooseStep({
  state,
  desk,
}: {
  readonly state: RunningState
  readonly desk: OrderingDesk
}) {
  const words = useCounterWords()
  const { ordering, tap } = desk
  const narrow = useNarrow()
  const wanted = useWanted()
  const found = settleAll(ordering, state)[ordering.current]
  if (!found) return null
  const { offer, settled } = found
  const nameOf = nameIn(state.station)
  return (
    <section className={styles.choose} aria-labelledby="order">
      <h2 id="order" className="visually-hidden" tabIndex={-1} data-step="">
        {words.order}
      </h2>
      <div className={styles.work} inert={ordering.sending !== null}>
        <OrderBar state={state} desk={desk} />
        <ItemRows
          offer={offer}
          draft={ordering.drafts[ordering.current] ?? EMPTY_DRAFT}
          tap={tap}
          wanted={wanted}
        />
        <div className={styles.line}>
          <Line
            station={state.station}
            label={words.line}
            wrap={narrow ? 'by-well' : 'never'}
            renderPan={(pan, component) => (
              <PanChoice
                component={component}
                face={panFace(offer, settled, pan)}
                currency={state.station.currency}
                tap={tap}
                nameOf={nameOf}
                wanted={
                  isPanWanted(offer, settled, component.id)
                    ? {
                        isCounted:
                          wanted.isCounted(component.id) ||
                          state.station.items.some(
                            ({ id, heart }) => heart === component.id && wanted.isCounted(id),
                          ),
                        onWanted: () => wanted.component(component.id, settled?.item.id ?? null),
                      }
                    : null
                }
              />
            )}
          />
        </div>
      </div>
      <ReadBackPanel state={state} desk={desk} />
    </section>
  )
}
