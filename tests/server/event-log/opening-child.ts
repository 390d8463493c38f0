import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { StoreProblem, storeProblemSentence } from '#server/store/store-problem.ts'

const [path = ''] = process.argv.slice(2)

try {
  await openSqliteLog({ path }).close()
  console.log('opened')
} catch (error) {
  if (!(error instanceof StoreProblem)) throw error
  console.log(error.code)
  console.log(storeProblemSentence(error))
}
