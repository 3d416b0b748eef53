/** Whether the page came from a server that can also send what keeps it here; a page opened from disk is here already. */
export const canStay = (): boolean => /^https?:$/.test(location.protocol) && 'serviceWorker' in navigator

/** Keeps the page on this device, to be opened without a network and put among the programs. Asks the server for two small files. */
export async function stay(): Promise<void> {
  if (document.querySelector('link[rel="manifest"]') === null) {
    const link = document.createElement('link')
    link.rel = 'manifest'
    link.href = 'lengthwise.webmanifest'
    document.head.append(link)
  }
  await navigator.serviceWorker.register('offline.js')
  await navigator.serviceWorker.ready
}
