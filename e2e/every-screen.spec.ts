import { breaksNoRule, tabReachesAll } from './support/accessible.ts'
import { drawnTexts } from './support/drawn.ts'
import {
  buildsAreSaid,
  fitsGlovedHands,
  fitsWithoutScrolling,
  nothingIsCut,
  readsOnTheLine,
  targetsAreLarge,
  worksOnAPhone,
} from './support/legible.ts'
import { isLargeEnough, isUpright, readsFromAfar, TELEVISION } from './support/legible-text.ts'
import { PHONE, resize, TABLET, TABLETS, test } from './support/stage.ts'
import type { View } from './support/views/view.ts'
import { views } from './support/views.ts'

const check = (view: View) => {
  const { name, path, main, long } = view
  const isHot = !/^\/(house|join|devices|privacy|larder|menu.*|paper.*)?$/.test(path)
  const isBuild = path === '/assembly' && /making|waiting/.test(name)

  test(`${name}: accessible, legible, and it fits`, async ({ look }) => {
    const page = await look(view)
    for (const size of TABLETS) {
      await resize(page, size)
      if (size === TABLET) await breaksNoRule(page)
      if (size === TABLET) buildsAreSaid(await drawnTexts(page))
      if (isBuild) await readsOnTheLine(page, view, size)
      const texts = await drawnTexts(page)
      isUpright(texts, view, size)
      await isLargeEnough(page, view, size)
      if (!long) {
        nothingIsCut(texts, size)
        if (isHot || view.isWhole) await fitsWithoutScrolling(page, texts, size)
      }
      if (main && /assembly|pans/.test(path)) await fitsGlovedHands(page, view, size)
      if (path === '/counter') await targetsAreLarge(page, size)
    }
    if (/assembly|counter|hand-over|pans|plan|prep|larder|tasting/.test(path)) {
      await resize(page, PHONE)
      await worksOnAPhone(page, view, PHONE)
      if (view.isWholeOnPhone) await fitsWithoutScrolling(page, await drawnTexts(page), PHONE)
      await resize(page, TABLET)
    }
    if (path === '/pick-up') {
      await resize(page, TELEVISION)
      await readsFromAfar(page)
      await resize(page, PHONE)
      const texts = await drawnTexts(page)
      nothingIsCut(texts, PHONE)
      await fitsWithoutScrolling(page, texts, PHONE)
      await resize(page, TABLET)
    }
    await tabReachesAll(page)
  })
}

// One worker takes all that a scene has, so that it is played once.
for (const scene of new Set(views.map((view) => view.scene)))
  test.describe(scene, () => {
    test.describe.configure({ mode: 'default' })
    for (const view of views.filter((one) => one.scene === scene)) check(view)
  })
