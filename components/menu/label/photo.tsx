import { useState } from 'react'
import { keepPhoto, photoAt } from '#components/menu/label/ask-labels.ts'
import styles from '#components/menu/label/reading.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { MOST_PHOTO_BYTES, PHOTO_TYPES } from '#lib/editor/label-http.ts'

interface PhotoProps {
  readonly hash: string | null
  readonly name: string
  readonly onKept: (hash: string | null) => void
}

/** A picture of the label: taken here, kept by the server, and shown as it is kept. */
export function Photo({ hash, name, onKept }: PhotoProps) {
  const words = useLabelFormWords()
  const [isSending, setSending] = useState(false)
  const [problem, setProblem] = useState<string | null>(null)
  const sayRefused = (code: string): string => {
    const own: Readonly<Record<string, string>> = words.photoRefused
    const house: Readonly<Record<string, string>> = words.refused
    return own[code] ?? house[code] ?? words.refused.failed
  }
  const send = async (file: File | undefined) => {
    if (!file) return
    setProblem(null)
    if (file.size > MOST_PHOTO_BYTES) return setProblem(words.photoRefused['too-large'])
    setSending(true)
    const answer = await keepPhoto(file)
    setSending(false)
    if (answer.code === 'done') onKept(answer.hash)
    else setProblem(sayRefused(answer.code))
  }
  return (
    <div className={styles.photo}>
      {/* biome-ignore lint/performance/noImgElement: it comes from our own server, small already */}
      {hash !== null && <img src={photoAt(hash)} alt={words.photoAlt(name)} />}
      <label className={styles.file}>
        <input
          type="file"
          accept={PHOTO_TYPES.join(',')}
          capture="environment"
          disabled={isSending}
          onChange={({ target }) => void send(target.files?.[0])}
        />
        <b>{isSending ? words.photoSending : hash === null ? words.takePhoto : words.otherPhoto}</b>
      </label>
      {hash !== null && (
        <Button kind="quiet" onClick={() => onKept(null)}>
          {words.removePhoto}
        </Button>
      )}
      {problem !== null && <p role="alert">{problem}</p>}
    </div>
  )
}
