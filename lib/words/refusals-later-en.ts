import { sayClock } from '#lib/words/clock-en.ts'

/** The sentences of refusals are many and seldom said: fetched once a screen stands. */
export const loadRefusals = async () => {
  const { sayNotTaken, sayRefusal } = await import('#lib/words/refusals-en.ts')
  return { sayNotTaken, sayRefusal, sayClock }
}
