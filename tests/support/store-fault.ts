import { type StoreFault, StoreProblem } from '#server/store/store-problem.ts'

/** What kept `open` from opening a store. */
export const storeFaultOf = (open: () => unknown): StoreFault => {
  try {
    open()
  } catch (error) {
    if (error instanceof StoreProblem) return error.fault
    throw error
  }
  throw new Error('The store was opened')
}
