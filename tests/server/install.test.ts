import { describe, expect, test } from 'vitest'
import { nodeProblem } from '#server/install.mjs'

describe('the Node that starts it', () => {
  test.each(['20.19.0', '20.20.2', '22.12.0', '22.22.1', '24.0.0', '26.1.0'])('%s will do', (v) => {
    expect(nodeProblem(v)).toBeNull()
  })

  test.each(['18.20.8', '20.18.3', '21.7.0', '22.11.0', '23.9.0'])('%s will not', (v) => {
    expect(nodeProblem(v)).toContain(v)
  })
})
