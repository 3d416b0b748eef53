/** Hands a file to the browser to keep; nothing leaves the device. */
export function save(name: string, type: string, data: BlobPart): void {
  const url = URL.createObjectURL(new Blob([data], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

/** A file name from the title of the plan: letters and figures of any script, nothing that leads to another folder. */
export function fileName(title: string, ending: string): string {
  const base = title
    .toLowerCase()
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
  return `${base || 'plan'}${ending}`
}

// plan files end at one megabyte; larger ones are not even read
export const LARGEST_PLAN = 1_000_000

const KEY = 'lengthwise-plan'

/** The plan kept in this browser, only ever on request. Reading and writing may be forbidden; then nothing is kept. */
export const kept = {
  read(): string | null {
    try {
      return localStorage.getItem(KEY)
    } catch {
      return null
    }
  },
  write(text: string): boolean {
    try {
      localStorage.setItem(KEY, text)
      return true
    } catch {
      return false
    }
  },
  forget(): void {
    try {
      localStorage.removeItem(KEY)
    } catch {
      // nothing was kept
    }
  },
}
