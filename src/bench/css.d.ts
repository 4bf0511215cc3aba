/** Styles are built into the page by vite. */
declare module '*.css';
