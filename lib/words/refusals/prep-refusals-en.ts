/** Sentences for what stands in the way of preparing a planned service. */
import type { Refusal } from '#lib/service/refusal.ts'

const PREP_CODES = ['prep-not-ready', 'reading-no-tick'] as const

type PrepRefusal = Extract<Refusal, { readonly code: (typeof PREP_CODES)[number] }>

export const isOfPrep = (refusal: Refusal): refusal is PrepRefusal =>
  PREP_CODES.some((code) => code === refusal.code)

const WHY: Readonly<
  Record<
    Extract<PrepRefusal, { code: 'prep-not-ready' }>['why'],
    (what: string, at: string) => string
  >
> = {
  'nobody-there': (what, at) => `Nobody is there at ${at}${what}.`,
  'no-adult': (what, at) => `No certified adult is there at ${at}${what}.`,
  'no-hands': (what, at) => `At ${at} no hands or no table are free${what}.`,
  'too-late': (what, at) => `There is no time left before ${at}${what}.`,
}

export const sayPrepRefusal = (
  refusal: PrepRefusal,
  name: (id: string) => string,
  time: (at: number) => string,
): string => {
  switch (refusal.code) {
    case 'prep-not-ready': {
      const { component, at, why } = refusal
      const what = component === null ? '' : ` for ${name(component)}`
      return `${WHY[why](what, time(at))} Take one of the ways out on the Plan screen first.`
    }
    case 'reading-no-tick':
      return 'A reading can’t be ticked. Take it with a probe, and record it of its batch.'
  }
}
