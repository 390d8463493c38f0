import { Line } from '#components/line/line.tsx'
import { PanButton } from '#components/pans/pan-button.tsx'
import { type PansWords, usePansWords } from '#components/pans/words.tsx'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { portionsKept } from '#lib/rooms/pans/facts/kept.ts'
import { biasThatMatters, outlookOf } from '#lib/rooms/pans/facts/pan-outlook.ts'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface LeadLineProps {
  readonly state: RunningState
  readonly pictures: Readonly<Record<string, PanPicture>>
  readonly forecast: StationForecast | null
  readonly now: number
  /** Id of the pan whose panel is open. */
  readonly chosen: string | null
  readonly onPan: (id: string) => void
}

/** Whose scoop it is that stands in, and for whose its own does; '' where none does. */
const sayStandIn = (
  words: PansWords,
  state: RunningState,
  { component, standInFrom, lentTo }: PanPicture,
): string => {
  const name = nameIn(state.station)
  const said = [
    ...(standInFrom.length > 0 ? [words.standInFrom(standInFrom.map(name))] : []),
    ...(standInFrom.length === 0 && state.standIns[component] ? [words.standIn] : []),
    ...(lentTo.length > 0 ? [words.lentTo(lentTo.map(name))] : []),
  ]
  return said.join(', ')
}

/** The line with what is in it, and whether that lasts. */
export function LeadLine({ state, pictures, forecast, now, chosen, onPan }: LeadLineProps) {
  const words = usePansWords()
  return (
    <Line
      station={state.station}
      label={words.line}
      wrap="by-well"
      renderPan={({ id }, component) => {
        const one = pictures[id]
        const keep = state.keeps[component.id]
        return one ? (
          <PanButton
            picture={one}
            component={component}
            soiledBy={one.soiledBy.map(nameIn(state.station))}
            outlook={outlookOf(forecast, component.id)}
            times={foodTimes(state, 'pan', id, now)}
            kept={keep ? portionsKept(keep) : 0}
            standIn={sayStandIn(words, state, one)}
            bias={biasThatMatters(forecast, component.id)}
            timeZone={state.station.timeZone}
            chosen={chosen === id}
            onChoose={() => onPan(id)}
          />
        ) : null
      }}
    />
  )
}
