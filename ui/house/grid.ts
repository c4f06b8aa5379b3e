/** What is dragged comes to rest on lengths of so many mm, where nothing else holds it. */
export const GRID_MM = 50;
