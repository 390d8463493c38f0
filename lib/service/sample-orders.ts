/** Orders worth trying, for the samples. */

import { itemOf, pansOf } from '#lib/menu/find.ts'
import { labelOf } from '#lib/menu/label.ts'
import { askableAllergens } from '#lib/needs/askable.ts'
import { type Need, usualHandling } from '#lib/needs/codes.ts'
import { DIETS } from '#lib/needs/diets.ts'
import { type BuildChoice, usualChoice } from '#lib/service/build-choice.ts'
import type { Command } from '#lib/service/decide.ts'
import { knownNeeds } from '#lib/service/known-needs.ts'
import { ownDocument } from '#lib/service/mixing.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { itemLeft, levelsOf, sellable } from '#lib/stock/levels.ts'

export const choices = (state: RunningState): readonly BuildChoice[] => {
  const levels = levelsOf(state)
  return state.station.items.map((item) => {
    const usual = usualChoice(item)
    const { gone } = itemLeft(state, levels, item.id)
    const base =
      item.base?.choices.find((choice) => sellable(state, levels, choice) > 0) ?? usual.base
    return {
      ...usual,
      base,
      parts: {
        ...usual.parts,
        ...Object.fromEntries(
          gone.map((id) => [
            id,
            { placement: 'no' as const, portions: 0, because: 'gone' as const },
          ]),
        ),
      },
    }
  })
}

export const otherChoice = (state: RunningState, choice: BuildChoice): readonly BuildChoice[] => {
  const item = itemOf(state.station, choice.item)
  const others = (item.base?.choices ?? []).filter((base) => base !== choice.base)
  const parts = item.parts
    .filter((part) => !part.required && part.component !== item.heart)
    .map(
      (part): BuildChoice => ({
        ...choice,
        parts: {
          ...choice.parts,
          [part.component]:
            choice.parts[part.component]?.placement === 'no'
              ? { placement: 'in', portions: 1, because: 'asked' }
              : { placement: 'no', portions: 0, because: 'asked' },
        },
      }),
    )
  return [...parts, ...others.map((base) => ({ ...choice, base }))]
}

/** For a held build: without what it can be without, and with all that was told. */
export const plainest = (state: RunningState, build: Build): readonly BuildChoice[] => {
  const { choice, hold } = build
  if (!hold) return []
  const item = itemOf(state.station, choice.item)
  const needs = knownNeeds(build)
  const out = item.parts.filter((part) => !part.required && part.component !== item.heart)
  const parts = Object.fromEntries(
    out.map(({ component }) => [
      component,
      { placement: 'no' as const, portions: 0, because: 'need' as const },
    ]),
  )
  const plain: BuildChoice = {
    ...choice,
    parts: { ...choice.parts, ...parts },
    asked: needs.length > 0 ? 'needs' : 'none',
    needs,
    agreed: true,
  }
  return item.base ? item.base.choices.map((base) => ({ ...plain, base })) : [plain]
}

export const needsToTry = (state: RunningState): readonly Need[] =>
  [...askableAllergens(state.station), ...DIETS].map((code) => ({
    code,
    handling: usualHandling(code),
    reason: null,
  }))

const withNeed = (choice: BuildChoice, need: Need): BuildChoice => ({
  ...choice,
  asked: 'needs',
  needs: [need],
  agreed: true,
})

/** Orders that the person in charge may have a caution to accept in. */
const withCautions = (state: RunningState): readonly Command[] =>
  needsToTry(state).flatMap((need) =>
    choices(state).map(
      (choice): Command => ({
        type: 'acceptCaution',
        build: withNeed(choice, need),
        reason: 'guest-accepts',
      }),
    ),
  )

export const ofTheKitchen = (state: RunningState): readonly Command[] => {
  const { ingredients, components } = ownDocument(state)
  return [
    { type: 'signOn' },
    { type: 'signOff' },
    ...withCautions(state),
    ...ingredients.map(
      (one): Command => ({
        type: 'changeLabel',
        ingredient: one.id,
        label: labelOf(one),
        product: 'same',
      }),
    ),
    ...ingredients.map(({ id }): Command => ({ type: 'notSameProduct', ingredient: id })),
    ...pansOf(state.station).flatMap((pan) =>
      components.map(({ id }): Command => ({ type: 'soilPan', pan: pan.id, by: id })),
    ),
  ]
}
