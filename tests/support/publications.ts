/** What marks the title of a publication, or doubt about it: such things stand in docstrings and tests, never on a screen. */
export const PUBLICATION =
  /from memory|handbook|manual \d{4}|journal|magazine|article|trade press|rule of thumb|design guide|ISBN|\b(19|20)\d\d\b|\bpp?\. ?\d/i;
