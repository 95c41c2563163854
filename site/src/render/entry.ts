/** What the server bundle exports: an app that renders a route to HTML from the locals it is given. */
export { createApp } from 'astro/app/entrypoint';
