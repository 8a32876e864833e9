"""The inbox: reads mail, sorts it by urgency, leaves drafts for a person to send. It never sends and loses nothing."""
