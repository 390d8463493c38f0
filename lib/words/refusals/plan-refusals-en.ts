/** Sentences for what stands in the way of a plan. */
import type { Refusal } from '#lib/service/refusal.ts'

const PLAN_CODES = [
  'plan-in-past',
  'doors-close-first',
  'over-midnight',
  'no-such-time',
  'after-the-service',
  'there-twice',
  'adult-and-student',
  'plans-overlap',
  'not-as-planned',
  'food-of-before',
] as const

export type PlanRefusal = Extract<Refusal, { readonly code: (typeof PLAN_CODES)[number] }>

export const isOfPlan = (refusal: Refusal): refusal is PlanRefusal =>
  PLAN_CODES.some((code) => code === refusal.code)

/** A time is as it was typed, "HH:MM"; `day` says a civil date. */
export const sayPlanRefusal = (
  refusal: PlanRefusal,
  name: (id: string) => string,
  day: (date: string) => string,
): string => {
  switch (refusal.code) {
    case 'plan-in-past':
      return `${day(refusal.on)}, ${refusal.time} is past. Choose a day and doors that are still to come.`
    case 'doors-close-first':
      return `Doors open at ${refusal.opens} and close at ${refusal.closes}. Say them the other way round; a service ends before midnight.`
    case 'over-midnight':
      return `From ${refusal.from} to ${refusal.to} goes over midnight. Say it as two, one for each day.`
    case 'no-such-time':
      return `On ${day(refusal.on)} there is no ${refusal.time}: clocks are set forward over it. Choose another time.`
    case 'after-the-service':
      return `${day(refusal.on)} is after the service. Who helps is there on its day, or before it.`
    case 'there-twice':
      return `The same initials are there twice on ${day(refusal.on)}, the second time from ${refusal.from} to ${refusal.to}. Say it as one time, or give one of two people other initials.`
    case 'adult-and-student':
      return `The initials that are there on ${day(refusal.on)} from ${refusal.from} to ${refusal.to} are an adult’s and a student’s. Give one of them other initials.`
    case 'plans-overlap':
      return `Another service of this station is planned for ${day(refusal.on)}, ${refusal.doorsOpen} to ${refusal.doorsClose}. Choose another time, or change that plan.`
    case 'not-as-planned':
      return 'This service is planned for another station. Look again at which one you are in.'
    case 'food-of-before':
      return `The newest line doesn’t have ${name(refusal.component)} as it was prepared for this service. Answer that food first: throw it out, or set it aside.`
  }
}
