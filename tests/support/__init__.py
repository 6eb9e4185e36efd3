"""What several tests share: Node, Chromium, the three screens."""
