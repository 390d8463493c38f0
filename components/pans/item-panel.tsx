import { Panel } from '#components/job/panel.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { useSelling } from '#components/live/selling.ts'
import { SellingChoice } from '#components/pans/selling-choice.tsx'
import { itemPictures } from '#lib/rooms/pans/views/items-left.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface ItemPanelProps {
  readonly state: RunningState
  readonly item: string
  readonly acting: Acting
  readonly onBack: () => void
}

export function ItemPanel({ state, item, acting, onBack }: ItemPanelProps) {
  const words = useFoodWords()
  const picture = itemPictures(useSelling(state, 1)).find((one) => one.id === item)
  const name = nameIn(state.station)(item)
  const selling = picture?.selling ?? true
  return (
    <Panel title={name} facts={[words.leftFact(picture?.remaining ?? 0)]} onBack={onBack}>
      <SellingChoice
        what="item"
        id={item}
        name={name}
        selling={selling}
        because={[selling ? words.stopStays : words.resumeItemWhy]}
        acting={acting}
        onBack={onBack}
      />
    </Panel>
  )
}
