/**
 * Keeps the screen from going dark. Plain http has no Wake Lock, but a video that plays in the
 * page holds the screen as well: a muted one of two pixels, drawn from a canvas.
 */

/** How the screen is held: by the browser's lock, by the small video, or not at all. */
export type Held = 'lock' | 'video' | 'no'

const CHECK_EVERY_MS = 20_000
const DRAW_EVERY_MS = 1_000
const PLAYS_WITHIN_MS = 4_000

const after = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))

interface Small {
  readonly video: HTMLVideoElement
  /** Gives the stream a frame: without one the video waits and never counts as playing. */
  readonly draw: () => void
}

const createVideo = (): Small | null => {
  const canvas = document.createElement('canvas')
  canvas.width = 2
  canvas.height = 2
  const context = canvas.getContext('2d')
  if (!context || typeof canvas.captureStream !== 'function') return null
  const video = document.createElement('video')
  video.muted = true
  video.playsInline = true
  video.tabIndex = -1
  video.setAttribute('aria-hidden', 'true')
  video.srcObject = canvas.captureStream(1)
  const { style } = video
  style.position = 'fixed'
  style.left = '0'
  style.bottom = '0'
  style.width = '2px'
  style.height = '2px'
  style.pointerEvents = 'none'
  let isLight = false
  const draw = () => {
    isLight = !isLight
    context.fillStyle = isLight ? '#f4f1ea' : '#f3f0e9'
    context.fillRect(0, 0, 2, 2)
  }
  return { video, draw }
}

/** Holds the screen until the returned function is called; says each time how it is held. */
export const holdAwake = (onHeld: (held: Held) => void): (() => void) => {
  let ended = false
  let lock: WakeLockSentinel | null = null
  let small: Small | null = null
  let drawing: ReturnType<typeof setInterval> | null = null

  const byLock = async (): Promise<boolean> => {
    if (!('wakeLock' in navigator)) return false
    if (lock && !lock.released) return true
    try {
      lock = await navigator.wakeLock.request('screen')
      if (ended) void lock.release()
      return true
    } catch {
      return false
    }
  }

  const byVideo = async (): Promise<boolean> => {
    small ??= createVideo()
    if (!small) return false
    const { video, draw } = small
    if (!video.isConnected) document.body.append(video)
    drawing ??= setInterval(draw, DRAW_EVERY_MS)
    draw()
    try {
      await Promise.race([video.play(), after(PLAYS_WITHIN_MS)])
      return !video.paused && video.readyState >= HTMLMediaElement.HAVE_CURRENT_DATA
    } catch {
      return false
    }
  }

  const hold = async (): Promise<void> => {
    if (ended || document.visibilityState !== 'visible') return
    const held: Held = (await byLock()) ? 'lock' : (await byVideo()) ? 'video' : 'no'
    if (!ended) onHeld(held)
  }

  const again = () => void hold()
  const timer = setInterval(again, CHECK_EVERY_MS)
  document.addEventListener('visibilitychange', again)
  document.addEventListener('pointerup', again)
  again()
  return () => {
    ended = true
    clearInterval(timer)
    document.removeEventListener('visibilitychange', again)
    document.removeEventListener('pointerup', again)
    if (lock) void lock.release()
    if (drawing !== null) clearInterval(drawing)
    small?.video.remove()
  }
}
