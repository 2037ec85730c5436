package app.coilside.blocks

import android.text.Editable
import android.text.TextWatcher

/** Hears what is typed. */
class Typed(private val heard: (String) -> Unit) : TextWatcher {
    override fun beforeTextChanged(text: CharSequence?, start: Int, count: Int, after: Int) = Unit

    override fun onTextChanged(text: CharSequence?, start: Int, before: Int, count: Int) = Unit

    override fun afterTextChanged(text: Editable?) = heard(text.toString())
}
