import { useState } from 'react'
import { OtherScoop } from '#components/care/other-scoop.tsx'
import type { Choose } from '#components/job/chosen.ts'
import { Panel } from '#components/job/panel.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { CountForm } from '#components/pans/count-form.tsx'
import { biasOf, panFacts } from '#components/pans/pan-facts.ts'
import { PanHome } from '#components/pans/pan-home.tsx'
import { SellingChoice } from '#components/pans/selling-choice.tsx'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import type { FoodTimes } from '#lib/rooms/food/facts/food-times.ts'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import { effectOfStopping } from '#lib/rooms/pans/views/items-left.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { Pan } from '#lib/station/station-document.ts'

type Mode = 'home' | 'count' | 'selling' | 'scoop'

interface PanPanelProps {
  readonly state: RunningState
  readonly pan: Pan
  readonly picture: PanPicture
  readonly times: FoodTimes | null
  readonly forecast: StationForecast | null
  readonly acting: Acting
  readonly choose: Choose
  readonly onBack: () => void
}

/** What can be done with one pan, in the place of the cards. */
export function PanPanel(props: PanPanelProps) {
  const words = useFoodWords()
  const { state, pan, picture, times, forecast, acting, choose, onBack } = props
  const [mode, setMode] = useState<Mode>('home')
  const name = nameIn(state.station)(pan.component)
  const toHome = () => setMode('home')

  return (
    <Panel title={name} facts={panFacts(words, state, picture, times)} onBack={onBack}>
      {mode === 'home' && (
        <PanHome
          state={state}
          pan={pan}
          picture={picture}
          bias={biasOf(words, forecast, pan.component, name)}
          acting={acting}
          choose={choose}
          onMode={setMode}
          onBack={onBack}
        />
      )}
      {mode === 'selling' && (
        <SellingChoice
          what="component"
          id={pan.component}
          name={name}
          selling={picture.selling}
          because={
            picture.selling
              ? [
                  ...words.effect(
                    effectOfStopping(state, pan.component),
                    pan.component,
                    nameIn(state.station),
                  ),
                  words.stopStays,
                ]
              : [words.resumeWhy(picture.left)]
          }
          acting={acting}
          onBack={onBack}
        />
      )}
      {mode === 'scoop' && (
        <OtherScoop state={state} pan={pan} acting={acting} onDone={onBack} onBack={toHome} />
      )}
      {mode === 'count' && (
        <CountForm
          {...{ state, pan, picture, name, acting, choose }}
          onDone={onBack}
          onBack={toHome}
        />
      )}
    </Panel>
  )
}
