import type { ReactNode } from 'react'
import { ItemRows } from '#components/counter/item-rows.tsx'
import { OrderBar } from '#components/counter/order-bar.tsx'
import { PanChoice } from '#components/counter/pan-choice.tsx'
import { ReadBackPanel } from '#components/counter/read-back-panel.tsx'
import frame from '#components/counter/step.module.css'
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

interface ChooseStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly top: ReactNode
}

/** What is said, over the menu, over the line whose pans are tapped; both stand as they were asked. */
export function ChooseStep({ state, desk, top }: ChooseStepProps) {
  const words = useCounterWords()
  const { ordering, tap } = desk
  const narrow = useNarrow()
  const wanted = useWanted()
  const found = settleAll(ordering, state)[ordering.current]
  if (!found) return null
  const { offer, settled } = found
  const { station } = state
  const isSending = ordering.sending !== null
  const isCounted = (component: string) =>
    wanted.isCounted(component) ||
    station.items.some(({ id, heart }) => heart === component && wanted.isCounted(id))
  return (
    <section className={`${frame.step} ${frame.choose}`} aria-labelledby="order">
      <h2 id="order" className="visually-hidden" tabIndex={-1} data-step="">
        {words.order}
      </h2>
      <div className={frame.band}>
        <OrderBar state={state} desk={desk} />
        {top}
      </div>
      <div className={frame.talk}>
        <ReadBackPanel state={state} desk={desk} />
        <div className={frame.menu} inert={isSending}>
          <ItemRows
            offer={offer}
            draft={ordering.drafts[ordering.current] ?? EMPTY_DRAFT}
            label={words.menu}
            onChoose={(item) => tap({ act: 'choose', item })}
            wanted={wanted}
          />
        </div>
      </div>
      <div className={frame.line} inert={isSending}>
        <Line
          station={station}
          label={words.line}
          wrap={narrow ? 'by-well' : 'never'}
          renderPan={(pan, component) => (
            <PanChoice
              component={component}
              face={panFace(offer, settled, pan)}
              currency={station.currency}
              tap={tap}
              nameOf={nameIn(station)}
              wanted={
                isPanWanted(offer, settled, component.id)
                  ? {
                      isCounted: isCounted(component.id),
                      onWanted: () => wanted.component(component.id, settled?.item.id ?? null),
                    }
                  : null
              }
            />
          )}
        />
      </div>
    </section>
  )
}
