/** The dome of a refrigerant, and a line through it: where liquid boils. */
export const ICON = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" fill="#fbfaf6"/><path d="M3 27C9 26 10 6 16 6s7 20 13 21" fill="none" stroke="#1b1b18" stroke-width="3" stroke-linecap="round"/><path d="M9 18H23" stroke="#8f3410" stroke-width="3" stroke-linecap="round"/></svg>`
