// Asks the preview for news, and loads the page again when something changed after it was asked for.
new EventSource("/-/news").addEventListener("message", ({ data }) => {
  if (Number(data) > performance.timeOrigin) location.reload();
});
