"""Where each unit lies on the wall, how it is turned, and which like fabrics touch there."""
