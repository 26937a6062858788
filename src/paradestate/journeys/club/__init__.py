"""What several games share: bookings, boxes, loans, and who borrowed what."""
