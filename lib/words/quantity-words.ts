import type { AmountPart, MetricAmount } from '#lib/measure/amount-parts.ts'
import type { PanDepthIn, PanSize } from '#lib/measure/pans.ts'
import type { ScoopColour } from '#lib/measure/scoops.ts'

/** What each language says of quantities; one file a language fills it. */
export type QuantityWords = {
  /** BCP 47 tag for numbers and money. */
  readonly locale: string
  /** Parts joined, largest first; at least one. */
  readonly amount: (parts: readonly AmountPart[]) => string
  readonly metric: (amount: MetricAmount) => string
  readonly pieces: (count: number) => string
  /** An amount that is there but rounds to nothing: less than the smallest that is said. */
  readonly under: (smallest: string) => string
  readonly minus: (amount: string) => string
  readonly scoopColour: (colour: ScoopColour) => string
  /** The number always, the colour where one is known. */
  readonly scoop: (number: number, colour: ScoopColour | null) => string
  readonly ladle: (flOz: number) => string
  readonly panSize: (size: PanSize) => string
  readonly pan: (size: PanSize, depthIn: PanDepthIn) => string
}
