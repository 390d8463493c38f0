/** The shell bar, set up from nothing by tapping, part by part. */
import type { Page } from '@playwright/test'
import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { button, fill, type Hands, readLabel, section, tap, untilSaved } from './menu-hands.ts'
import { APART, ITEMS, PANS, SECOND_PANS, WELLS } from './shell-bar.ts'
import { expect } from './station.ts'

const ALL_PANS = PANS.length + SECOND_PANS.length

export const putWells = async (page: Page, hands: Hands): Promise<void> => {
  for (const held of WELLS) await tap(hands, button(page, words.line.moreWells(held)))
  await tap(hands, button(page, words.line.putWells(WELLS.length)))
}

const putPan = async (page: Page, hands: Hands, name: string): Promise<void> => {
  await fill(hands, page.getByLabel(words.line.whatGoesIn), name)
  await tap(hands, button(page, words.line.putItIn))
  // What is typed into a panel that is going would be of the one before.
  await expect(page.getByRole('heading', { name })).toBeVisible()
}

/** All pans: what each holds, what kind of food it is, and its portion. */
export const putPans = async (page: Page, hands: Hands): Promise<void> => {
  for (const one of PANS) {
    await tap(hands, button(page, words.line.putIn(one.well)).first())
    if (one.size !== null) await tap(hands, button(page, words.line.size[one.size]))
    await putPan(page, hands, one.name)
    await tap(hands, button(page, new RegExp(`^${words.pan.straight}`)))
    await tap(hands, button(page, words.pan.kinds[one.kind]))
    await tap(hands, button(page, words.pan.toPortion))
    if (one.weighs === null) await tap(hands, button(page, words.pan.tools.piece))
    else
      await fill(
        hands,
        page.getByLabel(words.pan.density.ten(words.pan.density.scoops)),
        one.weighs,
      )
    await tap(hands, button(page, words.screen.close))
  }
  for (const { name, well } of SECOND_PANS) {
    await tap(hands, button(page, words.line.putIn(well)).first())
    await putPan(page, hands, name)
    await tap(hands, button(page, words.screen.close))
  }
  await untilSaved(page)
  await expect(page.getByText(words.screen.pansSet(ALL_PANS, ALL_PANS))).toBeVisible()
}

export const putItems = async (page: Page, hands: Hands): Promise<void> => {
  await section(page, hands, 'items')
  for (const item of ITEMS) {
    await tap(hands, button(page, `+ ${words.item.add}`))
    await expect(page.getByRole('heading', { name: words.item.noName })).toBeVisible()
    await fill(hands, page.getByLabel(words.item.name, { exact: true }), item.name)
    await fill(hands, page.getByLabel(words.item.price, { exact: true }), item.price)
    for (const taken of item.takes)
      await tap(hands, button(page, words.item.pan(taken, 'not')).first())
  }
}

/**
 * What touches what is confirmed once, but for the scoops, since each pan has its own, and for the
 * cream, which stands behind a divider.
 */
export const confirmTouches = async (page: Page, hands: Hands): Promise<void> => {
  await section(page, hands, 'touch')
  const { kinds } = words.item
  for (const said of [`${kinds.scoop}:`, `${kinds.beside}: ${APART}`]) {
    const one = page.getByRole('listitem').filter({ hasText: said })
    await tap(hands, one.getByRole('button', { name: words.item.never, exact: true }))
  }
  await tap(hands, button(page, /^Confirm all/))
  await expect(page.getByText(words.item.confirmed)).toBeVisible()
}

/** Each label, with its pack in hand. */
export const readLabels = async (page: Page, hands: Hands): Promise<void> => {
  await section(page, hands, 'publish')
  for (const one of PANS) {
    await tap(hands, button(page, new RegExp(`^The label of ${one.name}`)))
    await readLabel(page, hands, one)
  }
  await expect(page.getByText(/^The label of /)).toHaveCount(0)
}
