// Shows notices where a page may not do so itself, as on most phones, and opens the page when one is pressed. It keeps no page and answers no
// request: what Lampwright shows must be what is lit now.

self.addEventListener("install", () => self.skipWaiting());

self.addEventListener("notificationclick", (event) => {
  event.notification.close();
  event.waitUntil(open());
});

async function open() {
  const [page] = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  await (page === undefined ? self.clients.openWindow("./") : page.focus());
}
