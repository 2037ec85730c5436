package app.coilside.session

import android.content.Context
import android.util.Base64
import app.coilside.Ground
import app.coilside.Signer
import coilside.Action
import coilside.Door
import coilside.DoorSetup
import coilside.Effect
import coilside.Outcome
import coilside.Request
import coilside.Turn
import java.security.GeneralSecurityException
import java.util.Locale

/**
 * The core behind its door, with the key that signs for it and the alarms that it asks for. Used on the core's thread alone.
 */
class OpenCore(private val app: Context, private val ground: Ground, private val wakes: WakeRequests) {
    private var signer: Signer? = null
    private var wordsOf: String? = null

    /** None before it was opened. */
    var door: Door? = null
        private set

    /** Opens the folder where it is not open; the screen with every request that has no outcome. */
    fun opened(): Turn {
        val there = door ?: ground.signer(app).let { key ->
            signer = key
            val folder = ground.folder(app).apply { mkdirs() }
            val language = Locale.getDefault().toLanguageTag()
            Door.open(DoorSetup(folder.path, ground.entropy(), ground.now(), language, key.publicKey)).also { door = it }
        }
        return all(there)
    }

    /** Hands over what was done at the screen. [fresh] is told of the requests that this brought. */
    fun act(open: Door, id: String, action: Action, fresh: (List<String>) -> Unit): Turn {
        val turn = open.act(id, action, ground.now())
        fresh(turn.effects.map { it.id })
        // The step that an alarm belongs to may just have ended.
        return if (wakes.isWaiting) all(open) else turn
    }

    /** The screen with every request that is still open: an alarm that is not among them is taken back. */
    private fun all(open: Door): Turn = open.opened(ground.now()).also { turn ->
        wakes.onlyThese(turn.effects.filter { it.request is Request.WakeAt }.map { it.id }.toSet())
    }

    /** Signs what a turn asks for, with the key that never leaves the device; the answers' screens are newer. */
    fun signed(turn: Turn): Turn {
        var shown = turn
        val others = ArrayList<Effect>()
        val toSign = ArrayDeque<Pair<String, String>>()
        fun part(effects: List<Effect>) {
            for (effect in effects) {
                when (val request = effect.request) {
                    is Request.SignBytes -> toSign += effect.id to request.bytesBase64
                    // Set at once: it must ring also where the process ends before anything is drawn.
                    is Request.WakeAt -> wakes.wake(effect.id, request.utcMs, request.text)
                    is Request.ReadPacks -> Unit
                    else -> others += effect
                }
            }
        }
        part(turn.effects)
        repeat(SIGNATURES_MAX) {
            val (id, bytes) = toSign.removeFirstOrNull() ?: return@repeat
            val open = door ?: return@repeat
            shown = open.done(id, signatureOver(bytes), ground.now())
            part(shown.effects)
        }
        return Turn(shown.screen, others)
    }

    private fun signatureOver(base64: String): Outcome = try {
        val signature = signature(Base64.decode(base64, Base64.DEFAULT)) ?: ByteArray(0)
        Outcome.Signature(Base64.encodeToString(signature, Base64.NO_WRAP))
    } catch (locked: GeneralSecurityException) {
        Outcome.Failed(locked.toString())
    }

    /** The device key's signature; none before the core was opened. */
    fun signature(bytes: ByteArray): ByteArray? = signer?.sign(bytes)

    /** The words, where the language of the screens is another one than before. */
    fun wordsFor(turn: Turn): Words? {
        if (wordsOf == turn.screen.language) return null
        wordsOf = turn.screen.language
        return door?.words()?.let(::Words)
    }

    fun close() {
        door?.close()
        door = null
    }

    private companion object {
        const val SIGNATURES_MAX = 8
    }
}
