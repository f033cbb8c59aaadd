"""How long things take, from the owner's own record: times, forecast, tonight, wear.

Pure: a state and its record come in, facts and sentences go out. Kinds of event this
package does not know are passed over.
"""
