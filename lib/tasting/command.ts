/** What is asked of tastings, and why it isn't done. */
import type { ProbeAt, ReadingLack, ReadingQuestion } from '#lib/safety/readings.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'
import type { ToCookOn } from '#lib/tasting/heated.ts'
import type { NotMeasured } from '#lib/tasting/measured.ts'
import type { TasterTold } from '#lib/tasting/tasting.ts'

export interface PlanTasting {
  readonly type: 'planTasting'
  readonly station: string
  readonly on: string
  readonly from: string
  readonly to: string
  readonly period: string | null
  readonly portions: number
  readonly tasters: number
  readonly components: readonly string[]
}

export interface ReadTasting {
  readonly type: 'readTasting'
  readonly tasting: string
  readonly component: string
  /** Whole tenths of a degree, as the thermometer shows it. */
  readonly tenths: number
  readonly scale: Scale
  readonly probe: string
  readonly where: ProbeAt
  /** Seconds; none where left away. */
  readonly heldSeconds?: number | undefined
  readonly stoodSeconds?: number | undefined
  /** It was asked whether the other scale was meant, and it wasn't. */
  readonly scaleConfirmed?: boolean | undefined
  /** Of who read it; they lie in the second file. */
  readonly initials?: string | undefined
}

export interface EndTasting {
  readonly type: 'endTasting'
  readonly tasting: string
  /** Of who weighed or counted; they lie in the second file. */
  readonly initials?: string | undefined
  /** Of what was weighed or counted. */
  readonly yields: readonly {
    readonly component: string
    readonly typed: string
    readonly saved: boolean
  }[]
}

export type TastingCommand =
  | PlanTasting
  | ({ readonly type: 'askTaster'; readonly tasting: string; readonly taster: number } & TasterTold)
  | { readonly type: 'addTaster'; readonly tasting: string }
  | { readonly type: 'leaveOutOfTasting'; readonly tasting: string; readonly component: string }
  | { readonly type: 'makeTasting'; readonly tasting: string }
  | ReadTasting
  | { readonly type: 'readyToTaste'; readonly tasting: string }
  | EndTasting
  | { readonly type: 'dropTasting'; readonly tasting: string }

export type TastingRefusal =
  | {
      readonly code:
        | 'in-the-past'
        /** Clocks are set forward over it. */
        | 'no-such-time'
        /** It ends before it begins, or at midnight or later. */
        | 'over-midnight'
        | 'nothing-tasted'
        | 'no-such-tasting'
        | 'no-such-taster'
        | 'no-such-need'
        | 'too-many-tasters'
        | 'already-so'
        | 'over'
        | 'not-made'
        /** Nobody said that it is ready to taste. */
        | 'not-ready'
        | 'not-cooked-here'
        | 'no-initials'
        | 'id-used-for-something-else'
    }
  | { readonly code: 'no-such-component'; readonly component: string }
  | { readonly code: 'reading-lacks'; readonly lack: ReadingLack }
  | {
      readonly code: 'reading-asked'
      readonly question: ReadingQuestion
      readonly read: Temperature
    }
  | { readonly code: 'cook-on'; readonly foods: readonly ToCookOn[] }
  | { readonly code: 'not-asked'; readonly tasters: readonly number[] }
  | { readonly code: 'nobody-can-taste'; readonly components: readonly string[] }
  | { readonly code: 'not-measured'; readonly component: string; readonly because: NotMeasured }
