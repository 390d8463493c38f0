import { writeSync } from 'node:fs'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import {
  type NoteAnswer,
  type NoteEntry,
  noteAnswer,
  noteEntries,
} from '#tests/server/event-log/notes.ts'

const [path = '', times = '0', then = ''] = process.argv.slice(2)

const log = openSqliteLog<NoteEntry, NoteAnswer>({ path })

for (let turn = 0; turn < Number(times); turn += 1) {
  const after = turn * 3
  const appended = await log.append('lunch', after, noteEntries(after + 1, after + 3), [
    noteAnswer(`turn-${turn}`, after + 3),
  ])
  if (appended !== 'committed') throw new Error(appended)
  writeSync(1, `${turn}\n`)
}

if (then === 'be killed') process.kill(process.pid, 'SIGKILL')
else await log.close()
