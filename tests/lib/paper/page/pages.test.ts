import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inRuns, paged } from '#lib/paper/page/pages.ts'
import { frameOf, PAPER_MM, PAPERS, paperOf } from '#lib/paper/page/papers.ts'

const anyBlocks = fc.array(fc.record({ height: fc.integer({ min: 1, max: 120 }) }), {
  maxLength: 12,
})

describe('pages', () => {
  it('[PA2] each block is on one page, in order, inside it, none over another', () => {
    fc.assert(
      fc.property(anyBlocks, (blocks) => {
        const pages = paged(blocks, 100, 4)
        expect(pages.flat().map(({ height }) => height)).toEqual(blocks.map(({ height }) => height))
        for (const page of pages) {
          if (page.length > 1)
            for (const { y, height } of page) expect(y + height).toBeLessThanOrEqual(100)
          for (const [at, { y }] of page.entries()) {
            const before = page[at - 1]
            expect(y).toBe(before === undefined ? 0 : before.y + before.height + 4)
          }
        }
      }),
    )
  })

  it('[PA2] a page is begun only for what doesn’t fit the one before', () => {
    expect(paged([{ height: 48 }, { height: 48 }, { height: 48 }], 100, 4)).toHaveLength(2)
    expect(paged([{ height: 48 }, { height: 48 }], 99, 4)).toHaveLength(2)
    expect(inRuns([{ height: 50 }, { height: 50 }, { height: 1 }], 100)).toHaveLength(2)
  })

  it('[PA2] head, body and foot are inside their paper and apart', () => {
    for (const paper of PAPERS) {
      const { head, body, foot } = frameOf(paper)
      const { width, height } = PAPER_MM[paper]
      expect(head.y).toBeGreaterThanOrEqual(6.4)
      expect(head.y + head.height).toBeLessThan(body.y)
      expect(body.y + body.height).toBeLessThan(foot.y)
      expect(foot.y + foot.height).toBeLessThanOrEqual(height - 6.4)
      for (const box of [head, body, foot]) {
        expect(box.x).toBeGreaterThanOrEqual(6.4)
        expect(box.x + box.width).toBeLessThanOrEqual(width - 6.4)
      }
    }
  })

  it('paper goes by the locale', () => {
    expect(['en-US', 'en-CA', 'en-GB', 'en-AU'].map(paperOf)).toEqual([
      'letter',
      'letter',
      'a4',
      'a4',
    ])
  })
})
