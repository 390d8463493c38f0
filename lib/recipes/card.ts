/** A recipe card as it is typed, and what is bought for it. */
import type { Invoice } from '#lib/recipes/purchased.ts'

export interface CardLine {
  /** Id of the ingredient or the recipe. */
  readonly of: string
  readonly isRecipe: boolean
  /** The amount; '' where nobody typed one. */
  readonly typed: string
}

export interface Card {
  readonly id: string
  readonly name: string
  readonly lines: readonly CardLine[]
  /** '' where nobody said. */
  readonly yields: string
}

export interface Bought {
  readonly name: string
  /** Of what is bought so much is eaten, 1 to 100; null where nobody said: then as all of it. */
  readonly ediblePercent: number | null
  readonly invoices: readonly Invoice[]
}

/** Cards and bought things by their ids. */
export interface CardBox {
  readonly cards: ReadonlyMap<string, Card>
  readonly bought: ReadonlyMap<string, Bought>
}
