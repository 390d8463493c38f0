/** What is known of a pan, a few words each, for the head of its panel. */
import type { FoodWords } from '#components/job/use-food-words.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { holdsBefore } from '#lib/rooms/care/facts/product-before.ts'
import type { FoodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { portionsKept } from '#lib/rooms/pans/facts/kept.ts'
import { doubtOf, type PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

export const panFacts = (
  words: FoodWords,
  state: RunningState,
  picture: PanPicture,
  times: FoodTimes | null,
): readonly string[] => {
  const name = nameIn(state.station)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const keep = state.keeps[picture.component]
  const held = Math.floor(picture.amount / picture.each)
  return [
    picture.amount === 0
      ? words.holdsNothing
      : words.holds(held, words.amount(picture.amount, picture.unit)),
    words.onTicketsFact(picture.onTickets),
    words.leftFact(picture.left),
    ...(picture.loadedAt === null ? [] : [words.loadedFact(time(picture.loadedAt))]),
    ...(times?.newest
      ? [words.read(words.sayDegrees(times.newest.temperature), time(times.newest.at))]
      : []),
    ...(times?.nextBy ? [words.readNext(time(times.nextBy))] : []),
    ...(times?.throwOutAt ? [words.throwOutAt(time(times.throwOutAt))] : []),
    ...sayLastUse(words, state, times),
    ...sayDoubt(words, state, picture),
    ...(keep && portionsKept(keep) > 0
      ? [
          words.savedFact(
            portionsKept(keep),
            keep.for.map((one) => words.savedForName(one, name)),
          ),
        ]
      : []),
    ...(holdsBefore(state, picture.pan) ? [words.beforeFact] : []),
    ...(picture.standInFrom.length > 0 ? [words.standInFact(picture.standInFrom.map(name))] : []),
    ...(picture.lentTo.length > 0 ? [words.lentFact(picture.lentTo.map(name))] : []),
    ...(picture.soiledBy.length > 0 ? [words.soiledFact(picture.soiledBy.map(name))] : []),
  ]
}

/** The last day on which it may be used; nothing where no date binds it, or its time is told already. */
export const sayLastUse = (
  words: FoodWords,
  { station }: RunningState,
  times: Pick<FoodTimes, 'useBy' | 'throwOutAt'> | null,
): readonly string[] => {
  const ends = times?.useBy
  if (!ends || times.throwOutAt === ends.endsAt) return []
  const day = words.sayDay(ends.endsAt - 1, station.timeZone)
  return [ends.isDated ? words.dates.onPan(day) : words.dates.onPanUndated]
}

/** That its newest reading is questioned; nothing where it isn't. */
const sayDoubt = (
  words: FoodWords,
  state: RunningState,
  picture: PanPicture,
): readonly string[] => {
  const doubt = doubtOf(state, picture)
  return doubt ? [words.doubted(doubt.kind, doubt.read, doubt.counted)] : []
}

/** How heavy its scoops run, said plainly; '' while that can't be told. */
export const biasOf = (
  words: FoodWords,
  forecast: StationForecast | null,
  component: string,
  name: string,
): string => {
  const bias = forecast?.components[component]?.bias
  return bias ? words.bias(name, bias.percent, bias.fewer) : ''
}
