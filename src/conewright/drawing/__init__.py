"""Pictures, the strip, the legend and the sheet as plain shapes and plain data; pure, and knows no file and no page."""
