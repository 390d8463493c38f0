/** What a browser drew, measured in the page. */
import type { Page } from '@playwright/test'
import { CAP_HEIGHT_EM } from '#tests/support/legible-sizes.ts'

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** A line of text as far as its letters reach, in CSS pixels of the window. */
export interface DrawnText extends Box {
  readonly text: string
  readonly fontPx: number
  /** What an ancestor or the window cuts off it, at the worst side, pixels; 0 where nothing. */
  readonly cut: number
  /** It runs upward, downward or askew; a screen that is turned to the guest doesn't. */
  readonly isTurned: boolean
  /** It names a pan that shrank to a sliver, which is told by its place. */
  readonly isSliver: boolean
  /** It is marked as no more than an aside: nobody has to read it for what the screen is there for. */
  readonly isAside: boolean
  /** It stands in a row that is walked by swipe, so that it may lie beside the window. */
  readonly isSwiped: boolean
  /** It is on a page of paper, which is read in print: its size is held there, in points. */
  readonly isOnPaper: boolean
}

/** Letters reach this far below the line, in em (measured from the font file's "g"). */
const DESCENT_EM = 0.2

/** Every line of text that is drawn within a selector; of an open dialog only what is in it. */
export const drawnTexts = (page: Page, within = 'body'): Promise<readonly DrawnText[]> =>
  page.evaluate(
    ({ within, cap, descent }) => {
      const context = document.createElement('canvas').getContext('2d')
      const ascents = new Map<string, number>()
      const ascentEm = ({ fontWeight, fontFamily }: CSSStyleDeclaration): number => {
        if (!context) return 0.95
        const font = `${fontWeight} 100px ${fontFamily}`
        const known = ascents.get(font)
        if (known !== undefined) return known
        context.font = font
        const ascent = context.measureText('H').fontBoundingBoxAscent / 100
        ascents.set(font, ascent)
        return ascent
      }
      const isHidden = (element: Element): boolean =>
        element.closest('.visually-hidden') !== null ||
        !element.checkVisibility({ visibilityProperty: true, opacityProperty: true })
      const cutOff = (box: Box, element: Element): number => {
        const sides = (inner: Box, outer: Box) =>
          Math.max(
            outer.left - inner.left,
            outer.top - inner.top,
            inner.right - outer.right,
            inner.bottom - outer.bottom,
          )
        const page = document.documentElement
        const drawn = { left: -scrollX, top: -scrollY, right: 0, bottom: 0 }
        let worst = sides(box, {
          ...drawn,
          right: page.clientWidth,
          bottom: Math.max(page.scrollHeight, page.clientHeight) - scrollY,
        })
        for (let at: Element | null = element; at && at !== document.body; at = at.parentElement) {
          const { overflowX, overflowY } = getComputedStyle(at)
          if (overflowX === 'visible' && overflowY === 'visible') continue
          const edge = at.getBoundingClientRect()
          const top = edge.top + at.clientTop
          const left = edge.left + at.clientLeft
          const right = left + at.clientWidth
          worst = Math.max(worst, sides(box, { left, top, right, bottom: top + at.clientHeight }))
        }
        return Math.max(0, worst)
      }
      const turns = (element: Element | null): boolean => {
        if (!element) return false
        const { writingMode, transform, rotate } = getComputedStyle(element)
        if (writingMode !== 'horizontal-tb' || !/^(none|0deg|180deg)$/.test(rotate)) return true
        const { b, c } = new DOMMatrix(transform)
        return Math.abs(b) > 0.01 || Math.abs(c) > 0.01 || turns(element.parentElement)
      }
      const dialog = document.querySelector('dialog[open]')
      const nodes: Node[] = []
      for (const root of dialog ? [dialog] : document.querySelectorAll(within)) {
        const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT)
        for (let node = walker.nextNode(); node; node = walker.nextNode()) nodes.push(node)
      }
      const found: DrawnText[] = []
      for (const node of nodes) {
        const element = node.parentElement
        const text = node.textContent?.trim() ?? ''
        if (!element || text === '' || isHidden(element)) continue
        const row = element.closest('[data-swiped]')
        const isSwiped =
          row !== null &&
          getComputedStyle(row).overflowX === 'auto' &&
          row.clientWidth <= innerWidth
        const style = getComputedStyle(element)
        const fontPx = Number.parseFloat(style.fontSize)
        const range = document.createRange()
        range.selectNodeContents(node)
        for (const line of range.getClientRects()) {
          if (line.width < 1) continue
          const { left, right, top, bottom } = line
          const above = ascentEm(style) * fontPx
          const below = /[gjpqy,;()]/.test(text) ? descent * fontPx : 0
          const box =
            style.writingMode === 'horizontal-tb'
              ? { left, right, top: top + above - cap * fontPx, bottom: top + above + below }
              : { top, bottom, left: right - above - below, right: right - above + cap * fontPx }
          found.push({
            ...{ text, fontPx, ...box, cut: cutOff(box, element) },
            isTurned: turns(element),
            isSliver:
              element.closest(
                '[data-width="sliver"], [data-stand="sliver"], [data-stand="slim"]',
              ) !== null,
            isSwiped,
            isAside: element.closest('[data-aside]') !== null,
            isOnPaper: element.closest('section[data-paper]') !== null,
          })
        }
      }
      return found
    },
    { within, cap: CAP_HEIGHT_EM, descent: DESCENT_EM },
  )

export interface Control extends Box {
  readonly name: string
  readonly isEnabled: boolean
  /** How much of it a frame around it hides, pixels. */
  readonly cut: number
}

/** Everything that can be tapped and is drawn; of an open dialog only what is in it. */
export const drawnControls = (page: Page): Promise<readonly Control[]> =>
  page.evaluate(() => {
    const root = document.querySelector('dialog[open]') ?? document.body
    const hidden = (element: Element, box: DOMRect): number => {
      const frame = element.parentElement
      if (!frame) return 0
      const { left, top, right, bottom } = frame.getBoundingClientRect()
      const beyond = Math.max(
        left - box.left,
        top - box.top,
        box.right - right,
        box.bottom - bottom,
      )
      const clips = /hidden|clip/.test(getComputedStyle(frame).overflow)
      return Math.max(clips ? beyond : 0, hidden(frame, box))
    }
    return [...root.querySelectorAll<HTMLElement>('button, a[href], input, select')]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }))
      .map((element) => {
        const box = element.getBoundingClientRect()
        const { left, top, right, bottom } = box
        const cut = hidden(element, box)
        const name = element.getAttribute('aria-label') ?? element.textContent ?? ''
        const isEnabled = !element.matches(':disabled') && element.closest('[inert]') === null
        return { name: name.replace(/\s+/g, ' ').trim(), left, top, right, bottom, isEnabled, cut }
      })
  })

/** Elements that hold more than they show, the window first; a pixel of rounding is none. */
export const scrolled = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const more = (element: Element): string | null => {
      const down = element.scrollHeight - element.clientHeight
      const across = element.scrollWidth - element.clientWidth
      if (down <= 1 && across <= 1) return null
      const name = element.getAttribute('aria-label') ?? element.className
      return `${element.tagName.toLowerCase()} ${name}: ${down} px down, ${across} px across`
    }
    const scrolls = (element: Element): boolean => {
      const { overflowX, overflowY } = getComputedStyle(element)
      return /auto|scroll/.test(`${overflowX} ${overflowY}`)
    }
    const inner = [...document.body.querySelectorAll('*')].filter(
      (element) => scrolls(element) && element.checkVisibility(),
    )
    return [document.documentElement, ...inner].flatMap((element) => more(element) ?? [])
  })

/** How far two boxes lie apart, pixels; below 0 where they overlap. */
export const apart = (one: Box, other: Box): number =>
  Math.max(
    one.left - other.right,
    other.left - one.right,
    one.top - other.bottom,
    other.top - one.bottom,
  )
