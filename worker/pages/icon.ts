/** A gauge: its dial, its needle. */
export const ICON = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><circle cx="16" cy="16" r="14" fill="#fbfaf6" stroke="#1b1b18" stroke-width="3"/><path d="M16 16 24 8" stroke="#a33b12" stroke-width="3" stroke-linecap="round"/><circle cx="16" cy="16" r="2.5" fill="#1b1b18"/></svg>`
