/** What becomes of a tasting by what is asked, or why nothing does. */
import { civilDate } from '#lib/measure/civil.ts'
import { ONE } from '#lib/recipes/rational.ts'
import { type TypedYield, typedYield } from '#lib/recipes/typed-yield.ts'
import { wantedOf } from '#lib/recipes/wanted.ts'
import { questionReading, readingLacks } from '#lib/safety/readings.ts'
import type { Temperature } from '#lib/safety/temperature.ts'
import { isKnownNeed } from '#lib/station/codes/askable.ts'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { cardFor, servedIn } from '#lib/tasting/card-of.ts'
import type {
  EndTasting,
  PlanTasting,
  ReadTasting,
  TastingCommand,
  TastingRefusal,
} from '#lib/tasting/command.ts'
import { tastingLimit, toCookOn } from '#lib/tasting/heated.ts'
import { measuredRatio } from '#lib/tasting/measured.ts'
import {
  isToCome,
  MOST_TASTERS,
  type Tasted,
  type Tasting,
  type TastingReading,
  type ToldByTaster,
} from '#lib/tasting/tasting.ts'
import { tastingTimes } from '#lib/tasting/times.ts'
import { whoCanTaste } from '#lib/tasting/who-can-taste.ts'

export interface TastingFacts {
  /** Epoch milliseconds. */
  readonly now: number
  /** The newest published document of the station. */
  readonly station: StationDocument
  readonly told: ToldByTaster
}

export type TastingDecision = { readonly tasting: Tasting } | { readonly refusal: TastingRefusal }

const refuse = (refusal: TastingRefusal): TastingDecision => ({ refusal })

const yieldsOf = (typed: TypedYield) => (typed.ok ? typed.yields : null)

/** How often the card is made for so many portions; once where that can't be said. */
export const tastingFactor = (station: StationDocument, component: string, portions: number) => {
  const found = cardFor(station, component)
  if (!found) return ONE
  const yields = yieldsOf(typedYield(found.card.yields))
  const wanted = wantedOf(yields, `${portions} portions`, servedIn(station, component))
  return wanted.ok ? wanted.factor : ONE
}

const planned = (
  id: string,
  command: PlanTasting,
  { now, station }: TastingFacts,
): TastingDecision => {
  const { type: _, tasters, components, ...said } = command
  const all = [...new Set(components)]
  if (all.length === 0) return refuse({ code: 'nothing-tasted' })
  const missing = all.find((one) => !findComponent(station, one))
  if (missing !== undefined) return refuse({ code: 'no-such-component', component: missing })
  const times = tastingTimes(command, station.timeZone, now)
  if ('code' in times) return refuse(times)
  const numbers = Array.from({ length: tasters }, (_unused, index) => index + 1)
  return {
    tasting: {
      ...{ id, ...said, ...times, components: all },
      tasters: numbers.map((number) => ({ number, told: null })),
      stage: 'planned',
      ...{ readings: [], tasted: [] },
    },
  }
}

const notAsked = ({ tasters }: Tasting, told: ToldByTaster): TastingRefusal | null => {
  const silent = tasters.map(({ number }) => number).filter((number) => !told[number])
  return silent.length > 0 ? { code: 'not-asked', tasters: silent } : null
}

/** Everybody is asked, and of each food there is somebody who can have it. */
const lackingTasters = (
  tasting: Tasting,
  { station, told, now }: TastingFacts,
): TastingRefusal | null => {
  const silent = notAsked(tasting, told)
  if (silent) return silent
  // Held later than it was planned for, labels count as on the day on which it is.
  const today = civilDate(now, station.timeZone)
  // biome-ignore lint/complexity/useMathMinMax: civil dates are texts
  const on = today > tasting.on ? today : tasting.on
  const alone = whoCanTaste(station, { ...tasting, on }, told)
    .filter(({ can }) => can.length === 0)
    .map(({ component }) => component)
  return alone.length > 0 ? { code: 'nobody-can-taste', components: alone } : null
}

const made = (tasting: Tasting, facts: TastingFacts): TastingDecision => {
  if (tasting.stage !== 'planned') return refuse({ code: 'already-so' })
  const lack = lackingTasters(tasting, facts)
  return lack ? refuse(lack) : { tasting: { ...tasting, stage: 'making' } }
}

/** Why nothing more is cooked, or read, of it. */
const notCooking = ({ stage }: Tasting) =>
  stage === 'making' ? null : refuse({ code: stage === 'planned' ? 'not-made' : 'already-so' })

/** What is too low is recorded too: it says why it is cooked on. */
const read = (
  tasting: Tasting,
  command: ReadTasting,
  { station, now }: TastingFacts,
): TastingDecision => {
  const {
    component,
    tenths,
    scale,
    probe,
    where,
    heldSeconds = null,
    stoodSeconds = null,
  } = command
  const not = notCooking(tasting)
  if (not) return not
  if (!tasting.components.includes(component))
    return refuse({ code: 'no-such-component', component })
  if (!tastingLimit(station, component)) return refuse({ code: 'not-cooked-here' })
  const temperature: Temperature = { tenths, scale }
  const question = questionReading(temperature, 'cooking', station.safety.scale)
  const isConfirmed =
    question?.code === 'did-you-mean' && !question.must && command.scaleConfirmed === true
  if (question && !isConfirmed)
    return refuse({ code: 'reading-asked', question, read: temperature })
  const initialled = (command.initials ?? '').trim() !== ''
  const taken = { temperature, at: now, probe, where, initialled, heldSeconds, stoodSeconds }
  const lack = readingLacks(taken)
  if (lack) return refuse({ code: 'reading-lacks', lack })
  const reading: TastingReading = { component, ...taken }
  return { tasting: { ...tasting, readings: [...tasting.readings, reading] } }
}

/** All that is cooked was read at its limit or above; and who came later was asked too. */
const ready = (tasting: Tasting, facts: TastingFacts): TastingDecision => {
  const not = notCooking(tasting)
  if (not) return not
  const lack = lackingTasters(tasting, facts)
  if (lack) return refuse(lack)
  const foods = toCookOn(facts.station, tasting)
  return foods.length > 0
    ? refuse({ code: 'cook-on', foods })
    : { tasting: { ...tasting, stage: 'ready' } }
}

const ended = (
  tasting: Tasting,
  command: EndTasting,
  { station, told }: TastingFacts,
): TastingDecision => {
  if (tasting.stage !== 'ready')
    return refuse({ code: tasting.stage === 'planned' ? 'not-made' : 'not-ready' })
  // Who came once it was ready is asked too.
  const silent = notAsked(tasting, told)
  if (silent) return refuse(silent)
  const tasted: Tasted[] = []
  for (const { component, typed, saved } of command.yields) {
    if (!tasting.components.includes(component))
      return refuse({ code: 'no-such-component', component })
    if (typed.trim() === '') continue
    const card = cardFor(station, component)?.card
    const yields = card ? yieldsOf(typedYield(card.yields)) : null
    const factor = tastingFactor(station, component, tasting.portions)
    const read = measuredRatio(yields, factor, servedIn(station, component), typed)
    if (!read.ok) return refuse({ code: 'not-measured', component, because: read.code })
    tasted.push({ component, typed: typed.trim(), ratio: read.ratio, saved })
  }
  if (tasted.some(({ saved }) => saved) && (command.initials ?? '').trim() === '')
    return refuse({ code: 'no-initials' })
  return { tasting: { ...tasting, stage: 'over', tasted } }
}

/** @param id of the command; the tasting that it plans is called so */
export const decideTasting = (
  before: Tasting | null,
  id: string,
  command: TastingCommand,
  facts: TastingFacts,
): TastingDecision => {
  if (command.type === 'planTasting')
    return before ? refuse({ code: 'already-so' }) : planned(id, command, facts)
  if (!before) return refuse({ code: 'no-such-tasting' })
  if (!isToCome(before)) return refuse({ code: 'over' })
  const { tasters, components } = before
  switch (command.type) {
    case 'askTaster': {
      if (!tasters.some(({ number }) => number === command.taster))
        return refuse({ code: 'no-such-taster' })
      if ((command.asked === 'needs') !== command.needs.length > 0)
        return refuse({ code: 'no-such-need' })
      if (command.needs.some(({ code }) => !isKnownNeed(facts.station, code)))
        return refuse({ code: 'no-such-need' })
      const asked = tasters.map((one) =>
        one.number === command.taster ? { ...one, told: id } : one,
      )
      return { tasting: { ...before, tasters: asked } }
    }
    case 'addTaster':
      return tasters.length >= MOST_TASTERS
        ? refuse({ code: 'too-many-tasters' })
        : {
            tasting: {
              ...before,
              tasters: [...tasters, { number: tasters.length + 1, told: null }],
            },
          }
    case 'leaveOutOfTasting': {
      const left = components.filter((one) => one !== command.component)
      if (left.length === components.length)
        return refuse({ code: 'no-such-component', component: command.component })
      return left.length === 0
        ? refuse({ code: 'nothing-tasted' })
        : { tasting: { ...before, components: left } }
    }
    case 'makeTasting':
      return made(before, facts)
    case 'readTasting':
      return read(before, command, facts)
    case 'readyToTaste':
      return ready(before, facts)
    case 'endTasting':
      return ended(before, command, facts)
    case 'dropTasting':
      return { tasting: { ...before, stage: 'dropped' } }
  }
}
