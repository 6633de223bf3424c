-- JSON of leftPx and rightPx: the ends of the pot's rim as the grower set them, photo px; null: those found in the photo.
ALTER TABLE views ADD COLUMN rim_by_hand TEXT;
