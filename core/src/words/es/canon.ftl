# Las palabras del canon: hechos, qué hacer para ellos, peligros, riesgos, actos. Los nombres de las claves están en
# core/src/visit/fact.rs, core/src/procedure/danger.rs y core/src/procedure/pack.rs.

## Hechos

fact-supply = Corriente del equipo
fact-supply-on = conectada
fact-supply-off = cortada, sin comprobar
fact-supply-proved-dead = sin tensión, comprobado
need-supply-on = Conectar la corriente cuando todo esté cerrado y seco.
need-supply-off = Cortar la corriente en el seccionador y bloquearlo.
need-supply-proved-dead = Probar el comprobador, comprobar que no hay tensión, probar otra vez el comprobador.

fact-further-supplies = Otras alimentaciones
fact-further-supplies-none = ninguna
fact-further-supplies-on = conectadas
fact-further-supplies-off = cortadas, sin comprobar
fact-further-supplies-proved-dead = sin tensión, comprobado
need-further-supplies-none = Buscar resistencia, tarifa nocturna y desviador solar, y no encontrar ninguno.
need-further-supplies-on = Conectar las otras alimentaciones cuando el acumulador esté lleno.
need-further-supplies-off = Cortar y bloquear cada otra alimentación: resistencia, tarifa nocturna, desviador solar.
need-further-supplies-proved-dead = Comprobar sin tensión cada otra alimentación: resistencia, tarifa nocturna, desviador solar.

fact-stored-charge = Carga en los condensadores eléctricos
fact-stored-charge-present = puede haberla
fact-stored-charge-waited-out = espera cumplida
need-stored-charge-present = El equipo tuvo corriente.
need-stored-charge-waited-out = Esperar después del corte el tiempo de la etiqueta del fabricante.

fact-unit-pump = Bomba del equipo
fact-unit-pump-stopped = parada
fact-unit-pump-running = en marcha
need-unit-pump-stopped = Parar el equipo y dejar que su bomba se detenga.
need-unit-pump-running = Arrancar el equipo y ver que su bomba gira.

fact-service-pump = Bomba de servicio
fact-service-pump-stopped = parada
fact-service-pump-running = en marcha
need-service-pump-stopped = Parar la bomba de servicio.
need-service-pump-running = Llenar el circuito y arrancar la bomba de servicio.

fact-service-supply = Toma de la bomba de servicio
fact-service-supply-protected = con diferencial
fact-service-supply-bare = sin protección
need-service-supply-protected = Enchufar la bomba de servicio a un interruptor diferencial y pulsar su botón de prueba.
need-service-supply-bare = La bomba de servicio no tiene interruptor diferencial.

fact-heat-sources = Compresor y resistencias
fact-heat-sources-enabled = pueden arrancar
fact-heat-sources-locked-out = bloqueados
need-heat-sources-enabled = Permitir otra vez que arranquen compresor y resistencias.
need-heat-sources-locked-out = Bloquear compresor y resistencias para que no arranquen solos.

fact-valves = Válvulas al acumulador
fact-valves-open = abiertas
fact-valves-shut = cerradas, sin probar
fact-valves-proved-shut = cerradas, probado
need-valves-open = Abrir las válvulas al acumulador.
need-valves-shut = Cerrar las dos válvulas al acumulador.
need-valves-proved-shut = Probar con una prueba de fugas que las válvulas cierran.

fact-loop = Circuito de agua
fact-loop-empty = vacío
fact-loop-water = agua
fact-loop-acid = ácido
fact-loop-spent = ácido gastado
fact-loop-neutraliser = neutralizante
fact-loop-rinse = agua de enjuague
fact-loop-glycol = mezcla de glicol
need-loop-empty = Vaciar el circuito.
need-loop-water = Llenar el circuito con agua.
need-loop-acid = Circular la mezcla ácida.
need-loop-spent = Circular el ácido hasta que no haga espuma.
need-loop-neutraliser = Circular el neutralizante.
need-loop-rinse = Enjuagar el circuito con agua limpia.
need-loop-glycol = Llenar el circuito con la mezcla de glicol.

fact-loop-vent = Salida de aire del circuito
fact-loop-vent-closed = cerrada
fact-loop-vent-vented = abierta al aire
need-loop-vent-closed = Cerrar y tapar las tomas de servicio.
need-loop-vent-vented = Abrir al aire una toma de servicio para que salgan gas y presión.

fact-loop-heat = Temperatura del circuito
fact-loop-heat-hot = caliente
fact-loop-heat-cold = frío
need-loop-heat-hot = El circuito se midió caliente.
need-loop-heat-cold = Dejar enfriar el circuito y medirlo.

fact-rinse-check = Prueba del enjuague
fact-rinse-check-unproved = sin probar
fact-rinse-check-proved = igual a la red
need-rinse-check-unproved = El circuito aún no está enjuagado y medido.
need-rinse-check-proved = Enjuagar hasta que el pH o la conductividad sea igual a la del agua de la red.

fact-coil = Serpentín de aire
fact-coil-hot = caliente
fact-coil-cold = frío
need-coil-hot = El serpentín se notó caliente.
need-coil-cold = Dejar enfriar el serpentín hasta que esté frío a la mano.

fact-covers = Tapas
fact-covers-on = puestas
fact-covers-off = quitadas
need-covers-on = Poner todas las tapas.
need-covers-off = Quitar las tapas, una vez comprobado que no hay tensión.

fact-electrics = Parte eléctrica contra el agua
fact-electrics-covered = cubierta
fact-electrics-bare = sin cubrir
need-electrics-covered = Cubrir la parte eléctrica contra el agua.
need-electrics-bare = Quitar la cubierta de la parte eléctrica.

fact-dampness = Humedad en la parte eléctrica
fact-dampness-damp = húmeda
fact-dampness-dry = seca
need-dampness-damp = La parte eléctrica se encontró húmeda.
need-dampness-dry = Descubrir la parte eléctrica, buscar humedad, secar lo húmedo.

fact-fan-guard = Rejilla del ventilador
fact-fan-guard-on = puesta
fact-fan-guard-off = quitada
need-fan-guard-on = Poner la rejilla del ventilador.
need-fan-guard-off = Quitar la rejilla, una vez comprobado que no hay tensión.

fact-earth = Tierra de protección
fact-earth-on = conectada
fact-earth-off = sin conectar
need-earth-on = Conectar la tierra de protección y comprobarla.
need-earth-off = La tierra de protección se encontró abierta.

fact-eyes = Ojos
fact-eyes-protected = protegidos
fact-eyes-bare = sin protección
need-eyes-protected = Ponerse gafas cerradas o pantalla facial.
need-eyes-bare = La protección de los ojos está quitada.

fact-hands = Manos
fact-hands-protected = protegidas
fact-hands-bare = sin protección
need-hands-protected = Ponerse guantes que sirvan para el producto.
need-hands-bare = Los guantes están quitados.

fact-body = Cuerpo
fact-body-protected = protegido
fact-body-bare = sin protección
need-body-protected = Ponerse delantal o traje y calzado cerrado.
need-body-bare = El delantal o el traje está quitado.

fact-eyewash = Lavaojos
fact-eyewash-at-hand = al alcance
fact-eyewash-absent = fuera del alcance
need-eyewash-at-hand = Poner el lavaojos abierto y al alcance.
need-eyewash-absent = No hay lavaojos al alcance.

fact-room = Aire del lugar
fact-room-ventilated = ventilado
fact-room-closed = cerrado
need-room-ventilated = Abrir el lugar para que pase aire fresco.
need-room-closed = El lugar no tiene aire fresco.

fact-gas = Detector de refrigerante
fact-gas-clear = limpio
fact-gas-alarm = alarma
need-gas-clear = Leer el detector abajo, junto al equipo; debe marcar limpio.
need-gas-alarm = El detector dio alarma.

fact-vessel = Balde
fact-vessel-empty = vacío
fact-vessel-water = agua
fact-vessel-acid-mix = mezcla ácida
fact-vessel-alkali-mix = mezcla neutralizante
fact-vessel-cleaner = limpiador de serpentín
need-vessel-empty = Vaciar el balde según las normas locales y enjuagarlo.
need-vessel-water = Poner primero el agua en el balde.
need-vessel-acid-mix = Echar el ácido sobre el agua del balde.
need-vessel-alkali-mix = Mezclar el neutralizante.
need-vessel-cleaner = Mezclar el limpiador de serpentín.

fact-exchanger-acid = Ácido en este intercambiador
fact-exchanger-acid-allowed = permitido
fact-exchanger-acid-forbidden = prohibido
need-exchanger-acid-allowed = Comprobar en la etiqueta y con el fabricante que este ácido sirve para el metal del intercambiador.
need-exchanger-acid-forbidden = El intercambiador no debe tocar ácido.

fact-alkali-residue = Álcali o cloro cerca
fact-alkali-residue-none = nada
fact-alkali-residue-present = hay
need-alkali-residue-none = Enjuagar todo limpiador alcalino y sacar del lugar el cloro y los productos de piscina.
need-alkali-residue-present = Hay álcali o cloro cerca.

fact-backflow = Protección del agua potable
fact-backflow-protected = protegida
fact-backflow-open = sin protección
need-backflow-protected = Llenar con separación de aire o protección antirretorno.
need-backflow-open = El llenado no está protegido contra el retorno.

fact-tank = Acumulador
fact-tank-full = lleno
fact-tank-not-full = no lleno
need-tank-full = Llenar el acumulador y dejar salir el aire.
need-tank-not-full = El acumulador se encontró sin llenar.

fact-reheat = Temperatura de desinfección
fact-reheat-reached = alcanzada
fact-reheat-handed-over = pendiente, dueño avisado
fact-reheat-not-needed = sin agua potable en este equipo
need-reheat-reached = Calentar el acumulador hasta su temperatura de desinfección.
need-reheat-handed-over = Decirle al dueño que la desinfección está pendiente, y para cuándo.
need-reheat-not-needed = Ver si el equipo calienta agua potable.

fact-scald-check = Control de escaldado en el grifo
fact-scald-check-done = hecho
fact-scald-check-open = por hacer
fact-scald-check-not-needed = sin agua caliente en grifos de este equipo
need-scald-check-done = Medir el agua caliente en el grifo.
need-scald-check-open = El agua caliente en el grifo no se midió.
need-scald-check-not-needed = Ver si los grifos reciben agua caliente de este equipo.

fact-tag = Candado y etiqueta
fact-tag-tagged = en el seccionador
fact-tag-untagged = quitados
need-tag-tagged = Colgar el candado y la etiqueta propios en el seccionador.
need-tag-untagged = Quitar el candado y la etiqueta propios.

fact-electronics = Enchufes de la electrónica
fact-electronics-connected = puestos
fact-electronics-disconnected = quitados
need-electronics-connected = Enchufar otra vez la electrónica.
need-electronics-disconnected = Desenchufar placas, variadores y sensores.

fact-fitting-pressure = Presión detrás de la conexión
fact-fitting-pressure-present = con presión
fact-fitting-pressure-relieved = sin presión
need-fitting-pressure-present = La conexión está con presión.
need-fitting-pressure-relieved = Cerrar la entrada y soltar la presión; ver que por una salida abierta ya no sale agua.

fact-fitting-heat = Agua detrás de la conexión
fact-fitting-heat-hot = caliente
fact-fitting-heat-cold = fría
need-fitting-heat-hot = El agua detrás de la conexión se midió caliente.
need-fitting-heat-cold = Dejar enfriar el agua detrás de la conexión y medirla.

fact-air-path = Paso del aire
fact-air-path-clear = libre
fact-air-path-blocked = tapado
need-air-path-clear = Sacar lonas y tapones; volver a poner filtro y conductos.
need-air-path-blocked = El paso del aire está cerrado para el trabajo.

fact-ignition-sources = Fuentes de chispa
fact-ignition-sources-kept-away = fuera de la zona
fact-ignition-sources-present = en la zona
need-ignition-sources-kept-away = Dejar teléfono, linterna y aspiradora fuera de la zona.
need-ignition-sources-present = Algo en la zona puede dar una chispa.

fact-certificate = Certificado para circuitos de refrigerante
fact-certificate-held = lo tiene
fact-certificate-none = no lo tiene
need-certificate-held = Llamar a la persona certificada: solo ella abre el circuito.
need-certificate-none = El circuito queda cerrado.

## Actos

act-spray = Rociar el equipo
act-energise = Dar corriente
act-insulation-test = Medir el aislamiento con alta tensión
act-hand-over = Entregar el equipo en marcha
act-open-water = Abrir el circuito de agua
act-open-fitting = Abrir una conexión con agua detrás
act-open-circuit = Abrir el circuito de refrigerante

## Peligros

danger-acid-past-valves = No está probado que las válvulas cierran: el ácido podría llegar al agua potable.
    .do = No echar ácido. Cerrar las dos válvulas y probarlas con una prueba de fugas. Si ya hay ácido: parar la bomba, vaciarlo al balde y avisar que no se use el agua.
danger-acid-before-water = El ácido entraría antes que el agua: hierve y salpica.
    .do = Poner primero el agua y echar el ácido despacio sobre el agua.
danger-acid-unvented = El circuito no tiene salida de aire: el ácido o el neutralizante da gas, y la presión revienta una manguera.
    .do = Parar la bomba. Abrir el retorno al aire, la cara apartada, y después seguir.
danger-acid-unprotected = Ojos, manos o cuerpo están sin protección, o no hay lavaojos al alcance: el ácido ciega y quema.
    .do = Apartarse. Ponerse gafas, guantes y delantal, y el lavaojos al alcance. Tras una salpicadura: enjuagar con agua 15 minutos o más y pedir ayuda.
danger-acid-hot = El circuito no está frío, o algo puede calentarlo: el ácido caliente ataca rápido, da gas y salpica.
    .do = Bloquear compresor y resistencias y dejar enfriar el circuito. Medirlo antes de acercar el ácido.
danger-acid-material = No es seguro que este ácido sirva para el metal del intercambiador: podría perforarlo hasta el agua potable.
    .do = Consultar etiqueta y fabricante. En la duda, enjuagar solo con agua. Si ya hay ácido: vaciarlo, enjuagar y anotarlo como hallazgo.
danger-acid-beside-alkali = Hay o puede haber álcali o cloro cerca: con ácido da gas venenoso y calor.
    .do = Dejar el ácido cerrado. Enjuagar todo el limpiador y sacar del lugar el cloro y los productos de piscina. Si huele a cloro: salir, aire fresco, pedir ayuda.
danger-drinking-water-unproved = El enjuague no está probado: lo que hay en el circuito llegaría al agua potable.
    .do = Dejar cerradas las válvulas al acumulador. Enjuagar hasta que el pH o la conductividad sea igual a la del agua de la red. Si estaban abiertas: cerrarlas y avisar que no se use el agua.
danger-backflow-unprotected = El llenado no está protegido contra el retorno: el agua del circuito podría ser aspirada hacia la red.
    .do = Sacar la manguera del balde. Llenar con separación de aire o protección antirretorno.
danger-pump-dry = La bomba giraría con el circuito vacío, o nadie sabe qué hay en él: en seco se arruina pronto y su sello pierde.
    .do = Parar la bomba. Llenar el circuito, dejar salir el aire y entonces arrancarla.
danger-loop-shut-with-heat = El circuito está encerrado y algo puede calentarlo: la presión no tiene salida.
    .do = Cortar la corriente. Abrir una válvula o una salida de aire antes de que algo pueda calentar.
danger-opened-hot = No se sabe si el agua está fría: al abrir el circuito escalda.
    .do = Dejarlo cerrado. Enfriar, medir, quitar la presión y entonces abrir.
danger-liquid-changed-live = Se cambiaría el líquido del circuito mientras la corriente puede arrancar algo.
    .do = Comprobar que no hay tensión, o bloquear compresor y resistencias. Después cambiar el líquido.
danger-covers-off-live = Las tapas estarían quitadas sin comprobar la falta de tensión o sin esperar la carga: tocar puede matar.
    .do = Dejar las tapas puestas y las manos fuera. Bloquear cada alimentación, esperar la carga, comprobar que no hay tensión.
danger-power-on-unready = No se puede dar corriente: falta tapa, rejilla o tierra, o no está comprobado que la parte eléctrica está seca.
    .do = Dejar la corriente cortada. Tierra conectada, parte eléctrica seca, rejilla y tapas puestas: entonces conectar.
danger-power-on-gas = Hay alarma de refrigerante o falta una lectura limpia: una chispa podría encender el gas.
    .do = No conectar nada aquí. Aire fresco, gente fuera, y leer el detector. Tras una alarma, llamar a la persona certificada.
danger-element-tank-not-full = Hay una alimentación conectada con el acumulador sin llenar: una resistencia descubierta se quema y puede causar un incendio.
    .do = Cortar las alimentaciones. Llenar el acumulador, dejar salir el aire y entonces conectar.
danger-compressor-no-water = El compresor o las resistencias pueden arrancar mientras el circuito no tiene agua limpia.
    .do = Dejarlos bloqueados. Enjuagar, probar el enjuague, llenar con agua, abrir las válvulas.
danger-spray-live = Se rociaría sin comprobar que no hay tensión: el agua lleva la corriente hasta la persona.
    .do = Dejar la lanza. Bloquear y comprobar que no hay tensión.
danger-spray-bare = El agua daría en la parte eléctrica sin cubrir.
    .do = Dejar la lanza. Cubrir la parte eléctrica y entonces rociar.
danger-spray-hot = No se sabe si el serpentín está frío: el agua se vuelve vapor de golpe y las partes se deforman.
    .do = Dejar enfriar hasta que esté frío a la mano y entonces rociar.
danger-insulation-test-unready = La tensión de prueba daría en la electrónica enchufada, o en un equipo sin comprobar la falta de tensión.
    .do = Comprobar que no hay tensión, desenchufar placas, variadores y sensores, y entonces medir.
danger-hand-over-unchecked = No se comprobó si el agua caliente escalda, o nadie sabe de la temperatura de desinfección.
    .do = Medir en el grifo. Leer el acumulador, o decirle al dueño que la desinfección está pendiente.
danger-fitting-opened-unready = No es seguro que el agua detrás de la conexión esté fría y sin presión: escalda, y la conexión sale despedida.
    .do = Dejarla cerrada. Cerrar la entrada, soltar la presión, medir que está fría y entonces abrir.
danger-circuit-uncertified = Abriría el circuito de refrigerante una persona sin certificado.
    .do = Dejarlo cerrado. Medir con pinzas en los tubos, o llamar a la persona certificada.
danger-compressor-no-air = El compresor o el ventilador pueden arrancar con el paso del aire cerrado: suben presión y calor, o se hiela el serpentín.
    .do = Dejarlo bloqueado. Sacar lonas y tapones, volver a poner filtro y conductos.
danger-guard-off-live = Faltaría la rejilla del ventilador mientras puede arrancar solo: corta.
    .do = Manos fuera. Poner la rejilla, o bloquear y comprobar que no hay tensión.
danger-opened-in-gas = Se abriría una tapa sin lectura limpia del detector, o con algo cerca que puede dar una chispa.
    .do = Dejarla cerrada. Chispas fuera, aire fresco, leer el detector abajo. Tras una alarma, llamar a la persona certificada.
danger-hand-over-unsafe = Se encontró algo peligroso y no está arreglado: el equipo no se entrega en marcha.
    .do = Arréglelo y anote en el hallazgo qué hizo. Si aquí no se puede arreglar: interrumpa, bloquee y etiquete el seccionador y avise al propietario.
danger-left-untagged = La corriente está cortada y en el seccionador no hay candado ni etiqueta: alguien puede conectarla.
    .do = Ponga su candado y su etiqueta en el seccionador. Si no puede: diga al propietario que nadie lo conecte y llame a la oficina.

## Riesgos

caution-shock = Descarga eléctrica
    .text = Tocar partes vivas puede matar. Bloquear, etiquetar, comprobar sin tensión; manos secas, herramienta aislada. Las normas locales dicen quién puede hacerlo; mandan la persona habilitada y el fabricante.
caution-stored-energy = Carga después del corte
    .text = Condensadores eléctricos y variadores guardan una carga peligrosa tras el corte. Esperar el tiempo de la etiqueta, medir antes de tocar, guantes y herramienta aislados. Mandan el fabricante y la persona habilitada.
caution-acid = Ácido
    .text = El ácido ciega y quema, y su gas daña los pulmones. Gafas y pantalla facial, guantes químicos largos, delantal, lavaojos al alcance, aire fresco. Mandan etiqueta, fabricante y normas locales; en la duda decide la persona habilitada.
caution-alkali = Álcali
    .text = Los limpiadores alcalinos queman ojos y piel, y se nota tarde. Gafas cerradas, guantes químicos largos, delantal; nunca junto a ácido. Mandan etiqueta, fabricante y normas locales; en la duda decide la persona habilitada.
caution-spray = Chorro a presión
    .text = El chorro corta la piel y lanza suciedad y limpiador a la cara. Gafas, guantes, pie firme, baja presión, nadie delante. Mandan etiqueta, fabricante y normas locales; en la duda decide la persona habilitada.
caution-hot = Agua y superficies calientes
    .text = El agua caliente, el compresor y sus tubos queman y escaldan. Dejar enfriar y medir; guantes, la cara apartada al abrir. Mandan fabricante y normas locales; en la duda decide la persona habilitada.
caution-fan = Ventilador en giro
    .text = El ventilador arranca sin avisar y corta. Manos, pelo y ropa lejos; rejilla puesta siempre que pueda haber corriente. Mandan fabricante y normas locales; en la duda decide la persona habilitada.
caution-flammable = Refrigerante que puede arder
    .text = Una fuga se junta abajo y una chispa la enciende. Primero el detector; teléfono, linterna y aspiradora fuera hasta que marque limpio; aire fresco, sin llama. Mandan placa, fabricante y normas locales; en una fuga solo trabaja la persona certificada.
caution-height = Trabajo en altura
    .text = Una caída puede matar. Piso firme o plataforma, escalera atada y sujeta, acompañado, sin viento ni lluvia. Mandan las normas locales; decide la persona habilitada en el lugar.
caution-scald = Escaldado y legionela
    .text = El agua a más de 50 °C (122 °F) escalda en segundos; un acumulador tibio cría legionela. Medir en el grifo, revisar la válvula mezcladora, no respirar la neblina. Mandan fabricante, normas locales y persona habilitada.
caution-backflow = Agua potable en peligro
    .text = El agua de enjuague o los químicos pueden ser aspirados hacia la red. Separación de aire o protección antirretorno, guantes limpios, válvulas cerradas hasta probar el enjuague. Mandan las normas locales y el plomero habilitado.
caution-sharp = Aletas y bordes cortantes
    .text = Aletas y chapa cortan hasta el hueso. Guantes anticorte, mangas largas, gafas; nada a la fuerza. Mandan fabricante y normas locales; en la duda decide la persona habilitada.
caution-refrigerant = Circuito de refrigerante
    .text = Está a alta presión; lo que escapa congela la piel, asfixia y puede arder. Gafas y guantes; no aflojar uniones ni doblar tubos. Solo lo abre la persona certificada; mandan fabricante y normas locales.
caution-disposal = Químicos usados
    .text = Dañan a personas, desagües y agua. Gafas y guantes; neutralizar, guardar separado, nunca al pluvial. Mandan etiqueta, fabricante y normas locales; en la duda decide la persona habilitada.
caution-chlorine = Gas de cloro
    .text = El ácido sobre productos de piscina o lavandina da un gas que mata. Nunca en un mismo lugar, balde o manguera; enjuagar entre uno y otro; si huele a cloro: salir, aire fresco, pedir ayuda. Mandan etiqueta, fabricante y normas locales.
caution-high-pressure = Circuito a más de 100 bar
    .text = Un circuito con R744 guarda más de 100 bar, también parado al sol. Gafas, guantes, ninguna unión floja, ningún manómetro de otro refrigerante. Solo lo abre la persona certificada; mandan placa, fabricante y normas locales.
caution-suffocation = Gas que desplaza el aire
    .text = El dióxido de carbono y el nitrógeno se juntan abajo y adormecen sin olor. Puerta abierta, aire fresco, detector donde el lugar es chico; mareo: salir ya. Mandan las normas locales; en la duda decide la persona habilitada.
