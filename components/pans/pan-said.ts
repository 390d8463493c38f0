/** What is said of a pan: the one word on it, what stands below, and all of it for ears. */
import type { PansWords } from '#components/pans/words.tsx'
import type { FoodTimes } from '#lib/rooms/food/facts/food-times.ts'
import type { Outlook } from '#lib/rooms/pans/facts/pan-outlook.ts'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { NameOf } from '#lib/words/said-here.ts'

export interface PanSaid {
  readonly outlook: Outlook | null
  readonly times: FoodTimes | null
  /** Portions of its component that are saved for some orders. */
  readonly kept: number
  /** Whether another scoop stands in for its own, though none is told from where. */
  readonly isStoodIn: boolean
  /** Percent that its scoops run heavy, below zero light; 0 where that is no matter. */
  readonly bias: number
  readonly name: NameOf
  readonly time: (at: number) => string
}

const troubleWords = (
  words: PansWords,
  picture: PanPicture,
  times: FoodTimes | null,
): readonly [string, string] => {
  switch (picture.trouble) {
    case 'throw-out':
      return [words.throwOut, '']
    case 'off-sale':
      return [words.dontServe, times?.offSale ? words.dontServeWhy[times.offSale.why] : '']
    case 'unread':
    case 'timed':
      return [words.clockJumped, words.clockHelps[picture.trouble]]
    default:
      return [words.notKnown, words.notKnownWhy]
  }
}

const standingWord = (words: PansWords, picture: PanPicture): string => {
  if (picture.standing === 'short') return words.short(picture.lacking)
  if (picture.ended !== null) return words.endedAs[picture.ended]
  if (!picture.selling) return words.notSelling
  switch (picture.standing) {
    case 'not-loaded':
      return words.notLoaded
    case 'sold-out':
      return words.soldOut
    case 'empty':
      return words.empty
    case 'nearly-empty':
      return words.nearlyEmpty
    case 'stocked':
      return ''
  }
}

/** Whose scoop it is that stands in, and for whose its own does; '' where none does. */
const sayStandIn = (
  words: PansWords,
  { standInFrom, lentTo }: PanPicture,
  { name, isStoodIn }: PanSaid,
): string => {
  const said = [
    ...(standInFrom.length > 0 ? [words.standInFrom(standInFrom.map(name))] : []),
    ...(standInFrom.length === 0 && isStoodIn ? [words.standIn] : []),
    ...(lentTo.length > 0 ? [words.lentTo(lentTo.map(name))] : []),
  ]
  return said.join(', ')
}

export const sayPan = (words: PansWords, picture: PanPicture, about: PanSaid) => {
  const { standing, selling, trouble, left, soiledBy } = picture
  const { outlook, times, name, time } = about
  const [state, why] = trouble
    ? troubleWords(words, picture, times)
    : [standingWord(words, picture), '']
  const hasNumber = !trouble && selling && (standing === 'stocked' || standing === 'nearly-empty')
  const lasts = hasNumber && outlook && outlook.lasting !== 'enough' ? outlook : null
  const lasting = lasts ? words.advice.lastingWord[lasts.lasting] : ''
  const range = lasts?.by ? words.advice.range(lasts.by, time) : ''
  const mayContain = soiledBy.length > 0 ? words.mayContain(soiledBy.map(name)) : ''
  const standIn = sayStandIn(words, picture, about)
  const signs = [
    ...(about.kept > 0 ? [words.saved(about.kept)] : []),
    ...(standIn === '' ? [] : [standIn]),
    ...(about.bias !== 0 && !trouble ? [words.heavy(about.bias)] : []),
  ]
  const drawn = [
    ...(lasts ? [lasts.by ? words.onLine.tightFrom(lasting, time(lasts.by.from)) : lasting] : []),
    ...(hasNumber && !lasts && state !== '' ? [state] : []),
    ...(hasNumber || why === '' ? [] : [why]),
    ...(!hasNumber && !trouble && left > 0 ? [`${left} ${words.left}`] : []),
    ...signs,
  ]
  return {
    state,
    hasNumber,
    mayContain,
    lasting: lasts?.lasting ?? 'not-said',
    isSoon: lasts?.isSoon ?? false,
    /** On the vessel, each on a line of its own; what there is no room for is said for ears. */
    words: drawn.slice(0, mayContain === '' ? 2 : 1),
    more: [
      lasting,
      range === '' ? '' : words.advice.goneBy(range),
      why,
      mayContain,
      times?.throwOutAt && !trouble ? words.throwOutAt(time(times.throwOutAt)) : '',
      times?.readBy && !trouble ? words.readBy(time(times.readBy)) : '',
      ...signs,
    ].filter((one) => one !== ''),
  }
}
