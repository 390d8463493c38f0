/** Sentences for refusals about batches, readings, times, and what is thrown out. */

import type { BatchTimesProblem } from '#lib/safety/load.ts'
import type { MomentProblem } from '#lib/safety/readings.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { sayMuch } from '#lib/words/amounts-en.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { sayDateProblem } from '#lib/words/date-problems-en.ts'
import { sayNotOffered } from '#lib/words/food/ends-en.ts'
import { sayLotProblem } from '#lib/words/larder/lot-en.ts'
import { panRuleWords } from '#lib/words/pan-rules-en.ts'
import { type SayClock, safetyWords } from '#lib/words/safety-en.ts'

type FoodRefusal = Extract<
  Refusal,
  {
    readonly code:
      | 'other-component'
      | 'no-batch'
      | 'not-said-bought'
      | 'older-batch-first'
      | 'more-than-batch'
      | 'nothing-there'
      | 'not-read-here'
      | 'not-initialled'
      | 'reading-lacks'
      | 'reading-asked'
      | 'wrong-moment'
      | 'wrong-date'
      | 'wrong-amount'
      | 'wrong-place'
      | 'cannot-load'
      | 'cannot-take-lot'
      | 'stood-open'
      | 'cannot-top-up'
      | 'cannot-start-clock'
      | 'cannot-cool'
      | 'cannot-reheat'
      | 'way-not-allowed'
      | 'off-sale'
      | 'clock-unsure'
      | 'past-throw-out-by-then'
      | 'past-throw-out'
      | 'throw-out-first'
      | 'handed-over-first'
      | 'more-handed-over'
      | 'still-cooling'
      | 'end-not-offered'
      | 'end-asks-reading'
      | 'food-unanswered'
  }
>

const sayWrongMoment = (problem: MomentProblem | BatchTimesProblem, clock: SayClock): string =>
  problem.code === 'finished-before-started'
    ? safetyWords.load(problem, clock)
    : safetyWords.moment(problem)

const places = (count: number): string => counted(count, 'pan or batch', 'pans and batches')

const sayWeight = (mg: number): string => `${Math.round(mg / 1000)} g`

export const sayFoodRefusal = (
  refusal: FoodRefusal,
  name: (id: string) => string,
  clock: SayClock,
): string => {
  switch (refusal.code) {
    case 'cannot-take-lot':
      return sayLotProblem(refusal.problem, clock, name, sayMuch)
    case 'stood-open':
      return `This ${name(refusal.component)} was open on a line before: it never becomes a protected back-up. Put it on the line, or fill the back-up from a batch that didn’t.`
    case 'other-component':
      return `That batch isn’t ${name(refusal.component)}. Check which one you have.`
    case 'no-batch':
      return `${name(refusal.component)} is made here: start and finish its batch, and say which one it comes from, so that how it was made and held is known.`
    case 'not-said-bought':
      return refusal.lacks === 'bought'
        ? `Nobody said where this ${name(refusal.component)} comes from: say its batch, or that it is straight from the pack.`
        : `Say on which day the pack of ${name(refusal.component)} was opened: that day counts as its first.`
    case 'older-batch-first':
      return 'An older batch is left: take that first, or say that it stays behind.'
    case 'more-than-batch':
      return 'That is more than is left of it. Check the amount, or say what the batch really gave.'
    case 'not-read-here':
      return 'The station’s document doesn’t ask for it to be read. Made food on a shelf that is neither hot nor cold has 4 hours from when it was made.'
    case 'nothing-there':
      return `Nothing is in ${name(refusal.id)}.`
    case 'not-initialled':
      return 'Whoever did it puts their initials.'
    case 'reading-lacks':
      return safetyWords.lack[refusal.lack]
    case 'reading-asked':
      return safetyWords.question(refusal.question, refusal.read)
    case 'wrong-moment':
      return sayWrongMoment(refusal.problem, clock)
    case 'wrong-date':
      return sayDateProblem(refusal.problem)
    case 'wrong-amount':
      return panRuleWords.amount(refusal.problem, 'mg', { weight: sayWeight, name })
    case 'wrong-place':
      return panRuleWords.place(refusal.problem, { weight: sayWeight, name })
    case 'cannot-load':
      return safetyWords.load(refusal.problem, clock)
    case 'cannot-top-up':
      return safetyWords.topUp[refusal.why]
    case 'cannot-start-clock':
      return safetyWords.clockProblem[refusal.why]
    case 'cannot-cool':
      return `Cooling has to be read ${refusal.by === undefined ? 'in time' : `by ${clock(refusal.by)}`}, so somebody stays until then. Else don’t cool it: use it, hold it hot, or throw it out.`
    case 'cannot-reheat':
      return safetyWords.reheat[refusal.why]
    case 'way-not-allowed':
      return safetyWords.resolve['way-not-allowed']
    case 'off-sale':
      return `${name(refusal.component)}: don’t serve it yet. ${safetyWords.askInCharge}`
    case 'clock-unsure':
      return refusal.helps === 'read'
        ? `The clock jumped, and nobody knows how long ${name(refusal.component)} has gone unread. The lead confirms the clock, or reads the pan.`
        : `The clock jumped, and nobody knows whether the time of ${name(refusal.component)} is over. The lead confirms the clock first.`
    case 'past-throw-out-by-then':
      return `${name(refusal.component)} would be past its time before this is made. Choose again, or change the pan.`
    case 'past-throw-out':
      return `${sayBuild(name(refusal.id))} is past its time. Throw it out.`
    case 'throw-out-first':
      return `${refusal.count} still to be decided on or thrown out. Decide and initial that first.`
    case 'handed-over-first':
      return 'Builds were handed over with food that was found bad later. The person in charge answers for them before you close.'
    case 'more-handed-over':
      return `Handed over since you looked: ${list(refusal.builds.map(sayBuild), 'and')}. Look again.`
    case 'still-cooling':
      return 'A batch is still cooling. Read it to the end, or throw it out, before you close.'
    case 'end-not-offered':
      return sayNotOffered(refusal)
    case 'end-asks-reading':
      return 'Cooling starts with a reading. Read it now, before it leaves the heat.'
    case 'food-unanswered':
      return `${places(refusal.count)} still to answer, the first ${name(refusal.component)}. Say what each comes to, then close.`
  }
}
